"""What is offered to the owner of a bow before work begins."""
