# Kinds of components, their fields and what is wrong with a row.
