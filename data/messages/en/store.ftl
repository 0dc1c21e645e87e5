# Mistakes in files and what cures them.

# The file as a whole.

store-no-format = The file does not say what it is.
store-no-format-cure = Put { $line } on its first line.
store-other-format = This is "{ $found }", but "{ $wanted }" is needed here.
store-other-format-cure = Choose another file, or correct the first line if it is wrong.
store-newer-format = This file is "{ $found }", a format newer than this program.
store-newer-format-cure = Read it with a newer version, or ask its sender for the older format.
store-more-mistakes = { $more ->
    [one] There is one mistake more.
   *[other] There are { $more } mistakes more.
}
store-more-mistakes-cure = Cure those above first; many of the others may follow from them.

# Quantities.

store-quantity = { $key }: { $reason }.
store-write = Write { $text }.
store-write-any = Write { $kind }.
store-write-not-negative = Write { $kind } of zero or more.
store-write-positive = Write { $kind } above zero.
store-write-between = Write { $kind } from { $low } to { $high }.
store-out-of-range = { $key }: { $value } is not possible here.
store-wants-one-value = { $key } must be one value, not a range and not unknown.
store-write-one-value = Write one value.
store-typical-outside = The typical value does not lie inside the range.
store-typical-outside-cure = Write a typical value between the two ends, or leave it out; the middle is taken then.
store-wrong-order = { $high_key } is { $high }, which is below { $low_key }, { $low }.
store-wrong-order-cure = Correct one of the two: { $low_key } must not be above { $high_key }.

# Words and names.

store-perhaps = Perhaps "{ $word }" is meant.
store-one-of = Write { $words }{ $more ->
    [0] .
   *[other] , or one of { $more } more.
}
store-none-there = There is none to choose from yet.
store-unknown-word = { $key }: "{ $word }" is not known here.
store-bad-name = "{ $name }" cannot be a name.
store-bad-name-cure = A name has 1 to { $most } characters, no comma, no upright stroke, no tab and no line break.
store-reserved-name = "{ $name }" is what the pump is called.
store-reserved-name-cure = Give the divider another name.
store-doubled-name = The name "{ $name }" stands twice.
store-doubled-name-cure = Points and dividers need a name of their own each, places too. With count, several like points are numbered.
store-unknown-place = There is no place "{ $name }".
store-unknown-surroundings = "{ $word }" is no word for surroundings.
store-unknown-kind = "{ $kind }" is no kind of lubrication point.
store-unknown-divider = There is no divider "{ $name }".
store-unknown-feed = Neither the pump nor a divider is called "{ $name }".
store-unknown-thread = "{ $thread }" is no thread known here.
store-unknown-bearing = No bearing "{ $designation }" is in the table of boundary dimensions.
store-perhaps-bearing = Perhaps { $word } is meant; otherwise write bore, outside and width.
store-unknown-bearing-cure = Write bore, outside and width instead.
store-bearing-contradicts = { $key } is { $said }, but the bearing of that designation has { $table }.
store-bearing-contradicts-cure = Measure it: either the designation or the dimension is wrong. Leave out the one that you do not trust.
store-unknown-part = { $key }: no part "{ $id }" is in the catalogue.
store-part-of-other-kind = { $key }: part { $id } is of the kind "{ $kind }".
store-part-of-kind-cure = Write the id of a part of the kind { $kinds }, or "open".

# Places, air, electricity.

store-no-place = The job has no place.
store-no-place-cure = Add [[place]] with a name and its temperatures.
store-temperature-twice = The temperature is told twice.
store-temperature-twice-cure = Write either temperature, for a place that is always the same, or coldest, normal and hottest.
store-current-kind = "{ $text }" does not say whether the current is direct or alternating.
store-current-kind-cure = Write DC or AC behind the voltage, for example "24 V DC".
store-no-package = The job does not say where the pump stands.
store-no-package-cure = Add [package] with the place of the pump.

# The lubricant.

store-viscosity-twice = The viscosity is told twice.
store-viscosity-twice-cure = Write either grade or at_40.
store-unknown-grade = "{ $grade }" is no viscosity grade of ISO 3448.
store-grades = Write { $grades }, or at_40 for an oil between the grades.
store-needs-at-100 = An oil of { $at_40 } at 40 °C is too thin for its viscosity at 100 °C to be assumed.
store-needs-at-100-cure = Add at_100 from its data sheet.
store-unknown-class = "{ $class }" is no NLGI class.
store-class-too-stiff = Of a grease of class { $class } nobody knows how it flows through a line.
store-class-too-stiff-cure = Add its measured states as [[lubricant.row]], its flow curves as [[lubricant.curve]], or [lubricant.span] with yield_stress, consistency and index.
store-rows-and-span = The flow of the grease is told twice: by measured states and by a span.
store-rows-and-span-cure = Leave out [lubricant.span]; measured states are better.
store-row-twice = There are two measured states at { $temperature }.
store-row-twice-cure = Leave out the one that you trust less.
store-curve-columns = The curve has { $rates } shear rates and { $stresses } stresses.
store-curve-columns-cure = Write one stress for each shear rate.
store-no-fit-cure = Check the points of the curve, or give yield_stress, consistency and index in [[lubricant.row]].
store-fitted = State at { $temperature } fitted to { $points } measured points, largest miss { $error }.
store-unknown-lubricant = The library has no lubricant "{ $name }".

# Points.

store-no-point = The job has no lubrication point.
store-no-point-cure = Add [[point]] with at least its name and kind.
store-count = { $key } must be a number of things from 1.
store-count-cure = Write a whole number from 1 to { $most }.
store-given-unknown = { $key } is said to be unknown, but given holds what a manual states.
store-given-unknown-cure = Leave out given; the tool then works out the need by formula.
store-share-of-nothing = share divides a given quantity, and none is given.
store-share-of-nothing-cure = Add given, or leave out share.

# Dividers.

store-no-divider = The job has no divider, so no point can hang on one.
store-no-divider-cure = Add [[divider]] with a name; its part and sections may stay open.
store-feed-ring = These dividers feed one another in a ring: { $names }.
store-feed-ring-cure = One of them must be fed by "pump" or by a divider outside the ring.
store-not-on-divider = "{ $name }" does not hang on this divider.
store-served-twice = "{ $name }" stands twice in one section.
store-served-twice-cure = Name it once: its two outlets are then joined.
store-outlets = A section has two outlets, but { $found } names stand here.
store-outlets-cure = Write one name where the outlets are joined, two where they are not.
store-not-served = No section serves { $names }.
store-not-served-cure = Name each point and divider that hangs on this divider in one section, or write "open".

# What the tool takes where nobody said.

assume-altitude = Height of the site above the sea; judged. A higher site has thinner air to feed the pump.
assume-coldest-indoors = Coldest day indoors; judged.
assume-coldest-outdoors = Coldest day outdoors in a temperate climate; judged. Ask for the site's own.
assume-normal-indoors = Usual day indoors; judged.
assume-normal-outdoors = Usual day outdoors; judged.
assume-normal-between = Usual day, taken midway between the coldest and the hottest.
assume-hottest = Hottest day; judged.
assume-air-lowest = Lowest air pressure at the pump while the machine runs; practice of workshop nets.
assume-air-highest = Highest air pressure on an ordinary day; practice of workshop nets.
assume-air-possible = Highest air pressure that can ever reach the pump, at the compressor's relief; practice of workshop nets.
assume-dew-point = Pressure dew point of the air; practice of refrigerated dryers.
assume-hours-per-day = Running hours of a working day; judged.
assume-days-per-week = Working days of a week; judged.
assume-age = Longest time that lubricant may take to its point; common practice.
assume-event-time = Longest time of one lubrication event; judged.
assume-rest-factor = Yield stress after a long rest over yield stress in motion; judged, no open figure was found.
assume-stall-use = Share of the stall pressure that the highest need may use; common practice.
assume-band-low = Lower edge of the delivery band; common practice.
assume-band-high = Upper edge of the delivery band; common practice.
assume-floor = Least rate of any point in an automatic system; common practice, no source.
assume-back-pressure = Pressure that a bearing holds against its line; common practice.
assume-fittings = Loss in fittings as a share of the length of the line; judged.
assume-inlet-lowest = Absolute pressure below which a pump cylinder fills with void; judged.
assume-entrained-air = Air stirred into the lubricant, by volume at atmosphere; common practice.
assume-disc-warmer = How much warmer the disc can get than the hottest day of its place; judged.
assume-leg-length = Length of a stretch of line that nobody has measured; judged. Pace it out.
assume-leg-level = Rise of a stretch of line of which nobody spoke; taken as level.
assume-leg-rise = Rise of a stretch of line that nobody knows; judged.
assume-discharge = Length of the pipe behind the burst disc; judged.
assume-duty-full = Share of the running time in which the point moves; taken as all of it.
assume-duty = Share of the running time in which the point moves; judged.
assume-point-field = A fact of the point that nobody knew; the span is that of its kind.
assume-oil-at-40 = Viscosity of the oil at 40 °C; usual grades for lines.
assume-base-oil-at-40 = Viscosity of the base oil at 40 °C; usual for greases for lines.
assume-at-100 = Viscosity at 100 °C, from the viscosity index that mineral oils usually have.
assume-oil-density = Density of the oil at 15 °C; judged for mineral oils.
assume-pressure-coefficient = Rise of viscosity with pressure; judged for mineral oils.
assume-grease-density = Density of the grease; common practice for mineral-oil greases.
assume-halving = Warming that halves the yield stress; from memory of the literature.
assume-cold-length = Length of a line that nobody has paced out; judged.
assume-cold-bore = Bore of a line that nobody has measured; judged.
assume-tube-wall = Wall of a tube of which only the outside is known; judged from the walls in which steel tube of this size is sold.
assume-pump-ratio = Ratio of an air-driven pump whose plate nobody has read; judged.
assume-stall-efficiency = Share of ratio times air that seals and spring leave at rest; common practice.
assume-cold-end = What dividers and bearings ask at the far end of a progressive main; judged.
assume-cold-valves = What the metering valves of the parts at hand ask at the far end; read your own off their data.
assume-yield-stress = Yield stress at 25 °C by NLGI class; judged bands, a factor of three to five wide.
assume-consistency = Consistency factor at 25 °C by NLGI class; judged bands.
assume-index = Flow index by NLGI class; judged bands.

# The lock file.

store-lock-place = The job has no place "{ $at }".
store-lock-place-cure = It was renamed or removed since the lock was written: reopen it, or delete this choice.
store-lock-choice = "{ $chosen }" is not a choice that can be kept.
store-lock-quantity = { $reason }.
store-lock-choice-cure = Reopen it, or delete this choice; the tool then chooses anew.
store-lock-part = The catalogue has no { $kinds } "{ $id }".
store-lock-part-cure = Put the part back into the catalogue, or reopen this choice.
store-nothing-to-reopen = The lock holds no choice at "{ $at }".
store-nothing-to-reopen-cure = Look up the places in the lock file; all reopens everything.

# Files on the disk.

store-cannot-save = { $file } cannot be saved: { $reason }.
store-cannot-load = { $file } cannot be read: { $reason }.
store-too-large = { $file } is larger than { $most } MiB.
store-too-large-cure = This is hardly the right file; otherwise split it.
store-no-text = { $file } is no text in UTF-8: byte { $byte } belongs to another encoding.
store-no-text-cure = Save it as UTF-8 in the editor that wrote it.
store-cure-not-found = Check the path; the folder must exist.
store-cure-not-allowed = Ask for the right to write there, or choose another folder.
store-cure-full = Free some space, or choose another disk.
store-cure-path = Give the path of a file, not of a folder.
store-cure-other = Try again, or choose another folder.

# Changing one value.

store-change-place = There is no single value at "{ $at }".
store-change-place-cure = Write a place such as pause, air.lowest, place.NAME.coldest or point.NAME.duty.
store-change-stretch = The line to "{ $name }" has no stretch { $number }.
store-change-stretch-cure = { $count ->
    [0] Add its stretches to the file first: route = [{"{"} length = "8 m" {"}"}].
    [one] It has one stretch: write 1.
   *[other] Its stretches are counted from 1 to { $count }.
}
store-change-sections = "{ $text }" does not say which sections serve what.
store-change-sections-cure = Write each section and what it serves as the lock file does: 'SECTION: NAME, NAME | SECTION: NAME'.
store-change-member = The job has no { $sort } "{ $name }".
store-one-of-several = "{ $name }" is one of several points that the entry "{ $base }" counts together.
store-one-of-several-cure = Change the whole entry, or give this one an entry of its own in the file.

# Questions of metering.

store-metering-file = The file is no list of metering questions: { $reason }.
store-metering-model = { $id }: model { $model } is not one divider with its points; passed over.
store-metering-data = { $id }: { $reason }.
store-metering-lengths = { $id }: demand, lo and hi need as many numbers each, and so do sizes and piston_cost.
store-metering-kept = { $id }: kept_size needs one entry for each point: null, or the place of a size, counted from zero.
store-metering-rules = { $id }: model { $model } needs join_cost (M1) or K_max and tee_cost (M2), and not the other.

# Spreadsheets.

store-too-many-rows = The table has more than { $most } rows.
store-too-many-cells-cure = Is this the right file? Otherwise part it.
store-cell-too-large = This cell lies too far out, or holds more text than any cell needs.
store-no-table = This is no table: { $reason }.
store-no-table-cure = Save it again as a workbook, or as text parted by semicolons.
store-no-workbook = This is no workbook that can be read: { $reason }.
store-no-workbook-cure = Open it in a spreadsheet program and save it again as .xlsx, without a password.
store-unpacks-too-large = The workbook unpacks to more than { $most } MiB.
store-cell-date = This cell holds a date or a time of day.
store-cell-date-cure = A range such as 6-8 was probably taken for a date: format the cell as text and write 6..8.
store-cell-error = This cell holds the error { $error }.
store-cell-error-cure = Correct its formula, or write the value.
store-no-headers = The first row has no column "name".
store-no-headers-cure = Put the names of the columns into the first row, as the empty survey has them.
store-no-header = This column has no name in the first row.
store-no-header-cure = Name the column, or empty the cell.
store-sheet-of-no-kind = "{ $sheet }" is no kind of part.
store-sheet-of-no-kind-cure = Name the sheet after the kind of the parts in it, or delete it.
store-port-of-no-part = This port belongs to part "{ $id }", which is in no sheet.
store-port-of-no-part-cure = Correct the id in the column part, or delete the row.
store-cannot-make-workbook = The workbook cannot be made: { $reason }.
