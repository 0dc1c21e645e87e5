# Mistakes in files and what cures them.
