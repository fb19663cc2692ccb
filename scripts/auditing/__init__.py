"""What of others' work is installed and handed out: pins, licences, advisories, newer releases."""
