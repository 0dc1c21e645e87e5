# Quantities: how lists and ranges are said, and what is wrong with a quantity that cannot be read.

list-pair = { $first } and { $second }
list-more = { $first }, { $rest }
span = { $low } to { $high }
