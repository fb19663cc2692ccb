"""From the declarations and the pages to a folder that any web server can hand out."""
