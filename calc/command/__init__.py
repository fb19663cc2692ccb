"""What only the command line does: files, options, exit statuses."""
