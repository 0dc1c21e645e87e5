//! Job files, lock files and survey spreadsheets: reading, writing, old formats.
