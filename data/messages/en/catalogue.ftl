# Kinds of components, their fields and what is wrong with a row.

reading-too-large = The file has { $size } bytes; at most { $most } are read.
reading-split-file = Split it into several files.
reading-syntax = This is no TOML: { $reason }.
reading-syntax-cure = Correct the line; text stands in quotes, a list in square brackets.
reading-unknown-key = Nothing here is called `{ $key }`.
reading-perhaps = Perhaps `{ $word }` is meant.
reading-known-keys = These are known here: { $keys }.
reading-missing-key = `{ $key }` is missing.
reading-add-key = Add a line that begins with `{ $key } =`.
reading-wants-text = `{ $key }` must be a text.
reading-put-in-quotes = Write { $text }.
reading-unknown-word = `{ $key }` cannot be `{ $word }`.
reading-known-words = It is one of { $words }.
reading-wants-flag = `{ $key }` is true or false, without quotes.
reading-write-flag = Write { $flag }.
reading-wants-sort = `{ $key }` must be { $wanted }; here stands { $found }.
reading-write-sort = Write { $wanted }.
reading-sort-text = a text in quotes
reading-sort-number = a number
reading-sort-count = a whole number from 0
reading-sort-flag = true or false
reading-sort-date = a date
reading-sort-list = a list in square brackets
reading-sort-table = a table
reading-sort-quantity = a number with its unit, in quotes
reading-wants-one-value = `{ $key }` must be one value.
reading-write-one-value = Write one value; a range or an unknown cannot stand in a catalogue.
reading-quantity = `{ $key }`: { $reason }
reading-write = Write { $text }.
reading-write-number-and-unit = Write a number and its unit, in quotes.
reading-write-number-with-unit-of = Write a number with one of the units { $units }, in quotes.
reading-write-plain-number = Write a plain number.

catalogue-unknown-kind = There is no kind of part called `{ $kind }`.
catalogue-known-kinds = The kinds are { $kinds }.
catalogue-doubled-id = The id `{ $id }` stands twice.
catalogue-doubled-id-cure = Give this part another id; the first is in { $file }, line { $line }.
catalogue-no-such-part = There is no { $kind } with the id `{ $id }`.
catalogue-part-of-other-kind = The part `{ $id }` is a { $kind }, not a { $wanted }.
catalogue-no-such-part-cure = Name the id of a { $kind } of this catalogue.
catalogue-empty = `{ $key }` is empty.
catalogue-empty-cure = Write something, or leave the line with `{ $key }` out.
catalogue-price = `{ $text }` is no price.
catalogue-price-cure = Write an amount with a decimal point and the currency, for example "12.50 EUR".
catalogue-out-of-range = `{ $key }` cannot be { $value }.
catalogue-range-finite = It must be a finite number.
catalogue-range-positive = It must be more than nothing.
catalogue-range-not-negative = It must not be below nothing.
catalogue-range-between = It lies between { $low } and { $high }.
catalogue-unknown-thread = `{ $thread }` is no thread that is known here.
catalogue-thread-pitch = Add the pitch: { $threads } exist.
catalogue-thread-writings = Write it like G 1/4, M10x1, 1/4-18 NPT, 7/16-20 UNF, tube 8 or hose 4.
catalogue-doubled-mark = Two ports are marked `{ $mark }`.
catalogue-doubled-mark-cure = Give each port of a part its own mark.
catalogue-contradiction-cure = Correct `{ $field }` or what it is compared with, from the part itself.
catalogue-ends-crossed = `{ $low }` ({ $low_value }) must be below `{ $high }` ({ $high_value }).
catalogue-drive-lacks = A pump with the drive `{ $drive }` needs `{ $field }`.
catalogue-air-too-little = With this ratio a cycle sweeps at least { $least } of air, not { $swept }.
catalogue-port-lacking = A { $kind } needs a port for `{ $role }`.
catalogue-port-number = A { $kind } of this sort has { $wanted } { $wanted ->
    [one] port
   *[other] ports
}; here { $found ->
    [one] is one
   *[other] are { $found }
}.
catalogue-mark-lacking = The { $kind } needs a port marked `{ $mark }`.
catalogue-reserve-too-large = The reserve ({ $reserve }) must be below the usable volume ({ $usable }).
catalogue-larger-than-its-shell = A vessel of this diameter and height holds { $shell }, not { $gross }.
catalogue-weight-without-plate = A plate has a weight only where there is a follower plate.
catalogue-disc-not-for-liquid = A disc that does not open fully in liquid cannot protect a system full of lubricant.
catalogue-holder-without-pressure = An indicator or switch moves at some pressure behind the disc; say at which.
catalogue-wall-fills-tube = A wall of { $wall } leaves no bore in a tube of { $outside }.
catalogue-rating-without-basis = A rated pressure of a tube says nothing without the formula, stress and tolerance behind it.
catalogue-not-whole = { $value } is no whole number.
catalogue-oil-or-grease = A lubricant is either an oil or a grease.
catalogue-oil-or-grease-cure = Describe it in one table, `oil` or `grease`.
catalogue-rows-or-span = The flow of a grease is known by measured `rows` or by ranges `at_25`.
catalogue-rows-or-span-cure = Give one of the two.
catalogue-rows-doubled = The rows must be at different temperatures, and at least one is needed.
catalogue-rows-doubled-cure = Keep one row for each temperature.
catalogue-spread = `{ $key }` must hold the lowest, the typical and the highest value, in this order.
catalogue-spread-cure = Write three values in rising order, for example ["100 Pa", "200 Pa", "400 Pa"].
catalogue-doubled-lubricant = There are two lubricants called `{ $name }`.
catalogue-doubled-lubricant-cure = Give each its own name.
