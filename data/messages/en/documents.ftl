# Headings and captions of the sheets.
