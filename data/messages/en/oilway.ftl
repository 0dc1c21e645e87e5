# What the command line and the pages say.

oilway-about = The workbench of the engineer who specifies, builds and supports centralized lubrication systems.
oilway-after-help =
    Exit codes: 0 works, 3 works with care, 4 will not work, 5 cannot tell yet, 6 mistakes in the input, 7 a file could not be read or written, 2 wrong command line.

    This is an engineering aid. Local codes and licensed practice decide.
oilway-heading-common = For every verb
oilway-heading-examples = Examples:
oilway-option-units = Units of the answer; without it those of the job, or metric
oilway-option-both = Say every quantity in both systems of units
oilway-option-all = Show long lists whole
oilway-option-json = Answer in JSON, as docs/schema/ describes it
oilway-option-colour = Heavy letters and colours: on a terminal only, always, or never
oilway-option-catalogue = A folder of your own parts, which go over the house range

oilway-value = { $value }

# Exit codes

oilway-exit-works = answered; where a system was judged: it works
oilway-exit-usage = the command line is wrong
oilway-exit-with-care = works with care: somebody must know or watch something
oilway-exit-will-not-work = will not work, or must not be built or started like this
oilway-exit-cannot-tell = cannot tell yet: the facts do not suffice
oilway-exit-mistakes = there are mistakes in what was handed in; all of them are told
oilway-exit-files = a file could not be read or written

# Mistakes

oilway-mistakes-count = { $count ->
    [one] One mistake; nothing was calculated.
   *[other] { $count } mistakes; nothing was calculated.
 }
oilway-more-mistakes = { $more ->
    [one] One more mistake is not shown; --all shows it.
   *[other] { $more } more mistakes are not shown; --all shows them.
 }
oilway-more-cells-cure = Put these right first; the rest is told then.
oilway-perhaps = Did you mean { $word }?

# The calculation desk

oilway-verb-calc = Calculate with one formula; without values, say what it is
oilway-verb-calc-about = Without a formula it lists all of them; a part of a name or a word of a title lists those that fit. With values it calculates: each value with its unit, as spoken (3/8 in, 30..50 m, 20 bar ± 5 %). A range gives a range. With --cases it calculates a file of cases, one in a row (.csv) or line (.jsonl); a column may carry the unit of its bare numbers: bore [mm].
oilway-input-formula = Name of the formula, or a word to look for
oilway-input-values = The inputs by name, each with its unit
oilway-input-cases = A file of cases: .csv with the names in the first row, or .jsonl
oilway-family = { $name }
oilway-list-foot = { $count ->
    [one] One formula.
   *[other] { $count } formulas.
 } `oilway calc NAME` says what one is; `oilway calc NAME input=value …` calculates.
oilway-try = Calculate: { $command }
oilway-result-line = { $what }: { $value }
oilway-result = { $value }
oilway-result-span = { $span }, { $value } in the middle of the ranges
oilway-validity = Holds: { $validity }
oilway-source = Source: { $key }, { $place } ({ $standing })
oilway-allowed-any = any number
oilway-allowed-not-negative = zero or more
oilway-allowed-positive = more than zero
oilway-allowed-between = { $low } to { $high }
oilway-no-formula = There is no formula { $wanted }, nor one with that in its name or title.
oilway-no-formula-cure = `oilway calc` lists all formulas.
oilway-no-pair = "{ $text }" is no value for an input.
oilway-no-pair-cure = Write name=value, for example bore='8 mm'.
oilway-no-input = { $formula } has no input { $name }.
oilway-no-input-cure = It takes { $names }.
oilway-input-is = { $name } is the { $meaning }.
oilway-in-input = { $name }: { $what }
oilway-twice = { $name } is given twice.
oilway-twice-cure = Give it once; a range is written 30..50 m.
oilway-unknown-input = { $name } is not known.
oilway-unknown-input-cure = A single formula needs a value or a range: give the range in which it surely lies.
oilway-missing-input = { $name } is missing: { $meaning }.
oilway-missing-input-cure = Give it as { $name }=…, { $dimension } with its unit, or a range.
oilway-missing-number-cure = Give it as { $name }=…, a plain number or a range.
oilway-outside = { $name } cannot be { $value }.
oilway-outside-cure = It may be { $allowed }.
oilway-no-answer = { $formula } has no answer for these values, though each of them may be.
oilway-no-answer-cure = { $validity }
oilway-no-cases = { $file } holds no cases.
oilway-no-cases-cure = The first row names the inputs, each further row is a case.
oilway-progress-cases = calculating the cases
oilway-in-row = Row { $row }: { $what }
oilway-no-table = This is no table: { $reason }
oilway-no-table-cure = Give every row as many cells as the first one has.
oilway-no-object = Line { $row } is no JSON object: { $reason }
oilway-no-object-cure = Write one object a line, for example { "{" }"bore": "8 mm"{ "}" }.

# Jobs

oilway-input-job = The job file, or the folder that holds a job.toml
oilway-progress-design = designing
oilway-progress-study = looking what the unknowns do
oilway-obstacle = { $at }: { $what }
oilway-local-codes = This is an engineering aid: local codes and licensed practice decide.

# Files

oilway-file-is-there = { $file } is there already.
oilway-file-is-there-cure = Name another file, or move this one away; nothing is written over.
oilway-no-job-here = The folder { $folder } holds no job.toml.
oilway-no-job-here-cure = Name a job file, or a folder with a job.toml in it; `oilway demo FOLDER` makes one to begin with.
oilway-no-folder = The folder { $folder } cannot be made: { $reason }
oilway-no-folder-cure = Name a folder in which you may write.
oilway-in-cell = { $file }, cell { $cell }: { $what }
oilway-in-sheet = { $file }, sheet { $sheet }, cell { $cell }: { $what }

# Why

oilway-verb-why = Say how a number came to be, or why a choice was made
oilway-verb-why-about = Without a number it lists the numbers of the design. A choice is named as in the lock file: package.disc. A number is named by its lasting name or by words of it; the answer goes down through every formula to what the job says and to what is assumed.
oilway-input-number = The number, or words of its name
oilway-no-number = No number of this design is named { $wanted }.
oilway-no-number-cure = `oilway why { $job }` lists them.
oilway-more-numbers = { $more } more; name a part of the name, or take --all.
oilway-numbers-foot = Name one of them to see how it came to be.
oilway-number = { $name }: { $value }
oilway-choice = { $at }: { $chosen }
oilway-number-term = { $value }, { $name }
oilway-number-above = { $number } (see above)
oilway-constant = { $value }, { $meaning }
oilway-how-formula = { $title } ({ $id })
oilway-how-sum = the sum of
oilway-how-largest = the largest of
oilway-how-smallest = the smallest of
oilway-how-part = from part { $part }, { $field }
oilway-how-chosen = chosen: { $why }
oilway-how-solved = found step by step: { $why }
oilway-how-said = said in the job: { $place }
oilway-how-measured = measured: { $place }
oilway-how-plate = read off the plate: { $place }
oilway-how-assumed = assumed at { $place }: { $what }

# Spans

oilway-verb-span = Say what the unknowns do to the answer, and what to ask first
oilway-verb-span-about = Every range, unknown and assumption of the job is moved between its ends, alone and with the others. The answer is the span of the key numbers, the assumptions in the order of their weight, and the one question or measurement that would narrow it most. The exit code is 5 if the verdict turns inside a range, else that of the verdict.
oilway-spans = What the unknowns do
oilway-span-number = number
oilway-span-low = lowest
oilway-span-typical = typical
oilway-span-high = highest
oilway-assumptions = Assumed, the weightiest first
oilway-more-assumptions = { $more ->
    [one] One more; --all shows it.
   *[other] { $more } more; --all shows them.
 }
oilway-assumption = { $at }, { $span }: { $what } Moves the margin by { $weight } of the pressure available.
oilway-assumption-turns = { $said } The verdict turns at { $value }.
oilway-span-open = Nobody can tell yet: the verdict turns inside what nobody knows.
oilway-span-practice = No fact of the job turns the verdict; a rule of practice does, and asks for care.
oilway-span-closed = None of the ranges turns the verdict by itself.
oilway-question = Ask or measure first: { $question } Until then { $at } is taken as { $span }, and nothing else weighs more.
oilway-question-turns = Ask or measure first: { $question } Until then { $at } is taken as { $span }; the verdict turns at { $value }.

# What to ask on the telephone, or to measure

oilway-ask-altitude = How high above the sea does the plant stand?
oilway-ask-coldest = How cold does it get in { $name } on the coldest day of ten years, with the machine at rest?
oilway-ask-normal = How warm is it in { $name } on a usual working day?
oilway-ask-hottest = How hot does it get in { $name } on the hottest day, close to the machine?
oilway-ask-air-lowest = What does the air gauge nearest to the machine show when everything in the hall runs?
oilway-ask-air-highest = What does that air gauge show on a quiet day, when little air is used?
oilway-ask-air-possible = At what pressure does the safety valve of the compressor open? It stands on its plate.
oilway-ask-hours = How many hours does the machine run on a working day?
oilway-ask-days = On how many days of the week does the machine run?
oilway-ask-age = How old may the lubricant get before it reaches a bearing? The maker of the lubricant says how long it keeps.
oilway-ask-event-time = How long may one lubrication take before somebody becomes uneasy?
oilway-ask-rest-factor = How much more pressure does this grease need to start after a weekend than right after it moved? Nobody has that on paper: fill a tube with it, press until it moves, read the gauge, at once press again and read; let it rest for two days at one temperature and read once more. The last reading over the second is the number. Read the cautions S20 and S31 before any pressure is raised.
oilway-ask-stall-use = Who answers for the plant: how much of the pump's stall pressure may the worst path use?
oilway-ask-band-low = Who answers for the bearings: how far below its need may a point be served?
oilway-ask-band-high = Who answers for the bearings: how far above its need may a point be served?
oilway-ask-floor = What is the least that the builder of the machine wants at a point, however little it needs?
oilway-ask-back-pressure = How much pressure does a bearing hold against its line? Put a gauge between a grease gun or hand pump and the fullest bearing and read it while the lubricant goes in slowly. Read the cautions S20 and S31 before any pressure is raised.
oilway-ask-fittings = How many elbows, tees and fittings sit in the longest line? A photograph along the line is enough.
oilway-ask-inlet-lowest = Down to which suction does the maker of the pump let it draw?
oilway-ask-entrained-air = Does the lubricant come from a full drum with a follower plate, or is it stirred, poured or filled by hand? Milky grease and foam hold air.
oilway-ask-disc-warmer = Does the sun, an oven or a drive heat the pump package? Hold a thermometer to the disc holder on a hot afternoon.
oilway-ask-density = What density does the data sheet of the lubricant give?
oilway-ask-yield-stress = Which grease is it: name, NLGI class, and what yield stress does its maker give at 25 °C? Where he gives none: fill a tube of known bore D and length L, raise the pressure until it moves, and read p; the yield stress is p · D / (4 · L). Read the cautions S20 and S31 before any pressure is raised.
oilway-ask-consistency = Which grease is it, and has its maker a flow curve, shear stress over shear rate, at any temperature?
oilway-ask-halving = How much stiffer does this grease get in the cold: has its maker yield stresses or flow pressures at two temperatures? Where he has none, read the pressure that starts one filled tube at two temperatures 20 K apart. Read the cautions S20 and S31 before any pressure is raised.
oilway-ask-at-40 = Which viscosity at 40 °C does the data sheet of the lubricant give for the oil, or for the base oil of the grease?
oilway-ask-at-100 = Which viscosity at 100 °C, or which viscosity index, does the data sheet give?
oilway-ask-pressure-coefficient = Which kind of oil is it, mineral, ester or other, and has its maker a viscosity at high pressure?
oilway-ask-point-duty = How much of the running time does { $name } move?
oilway-ask-point-back-pressure = How much pressure does { $name } hold against its line? Put a gauge between a grease gun or hand pump and the point and read it while the lubricant goes in slowly. Read the cautions S20 and S31 before any pressure is raised.
oilway-ask-point-quantity = How much does { $name } get each time now: how many strokes of which grease gun?
oilway-ask-point-interval = How often is { $name } lubricated now?
oilway-ask-line-length = How long is stretch { $stretch } of the line to { $name }? Pace it out along the way that it will lie.
oilway-ask-line-rise = How much does stretch { $stretch } of the line to { $name } climb or fall from its start to its end?
oilway-ask-field = What is the { $field } of { $name }? The plate, the drawing or a rule laid on it tells.

oilway-name-peak-start = pressure to start the worst path, coldest day
oilway-name-peak-moving = pressure to move the worst path, coldest day
oilway-name-stall = stall pressure of the pump at lowest air
oilway-name-demand = what all points need
oilway-name-least = least delivery of any point, of its need
oilway-name-refill = time between refills
oilway-name-cold-limit = coldest at which it works
oilway-name-other = { $name }

# Pinned choices

oilway-verb-pin = Keep what was chosen: write the lock file beside the job
oilway-verb-pin-about = Once the customer has approved a design, its choices are kept like given ones in job.lock; a later run reports one that no longer passes; the exit code is the verdict of what is pinned. What the job gives itself stays in the job.
oilway-pinned = { $count ->
    [one] One choice is pinned in { $file }.
   *[other] { $count } choices are pinned in { $file }.
 }
oilway-pinned-verdict = { $says } The checker's verdict: { $verdict }.
oilway-verb-reopen = Let pinned choices be made anew
oilway-verb-reopen-about = Without a place it lists what is pinned. A place takes with it what lies below: package reopens package.disc too; all reopens everything.
oilway-input-places = Places to reopen, for example package.disc, or all
oilway-nothing-pinned = Nothing is pinned for { $job }.
oilway-nothing-pinned-cure = `oilway pin` keeps the choices of a design.
oilway-not-pinned = Nothing is pinned at { $at }.
oilway-not-pinned-cure = `oilway reopen JOB` lists what is pinned.
oilway-reopened = { $gone ->
    [one] One choice is open again
   *[other] { $gone } choices are open again
 }, { $kept } stay pinned in { $file }.

# Surveys

oilway-verb-survey = Write the spreadsheet that a fitter fills, or read it into a job file
oilway-verb-survey-about = `survey write FILE.xlsx` makes an empty survey with drop-down lists and an example row. `survey read FILE.xlsx JOB.toml` makes a job file of a filled one, also of a .csv; wrong cells are named by sheet, column and row, all in one run. Nothing is written over.
oilway-input-survey-action = write an empty one, or read a filled one
oilway-input-survey-file = The spreadsheet
oilway-input-survey-job = The job file to write; without it the spreadsheet's name with .toml
oilway-survey-written = { $file } is ready to be filled.
oilway-survey-read = { $file } holds no mistakes; the job is { $job }.

# Parts

oilway-verb-parts = List, show and check parts, and bring them to and from a spreadsheet
oilway-verb-parts-about = `parts list` gives the kinds, `parts list KIND` the parts of one, `parts show ID` one part. `parts check FOLDER` reads your own files and tells every mistake. `parts export FILE.xlsx` writes the catalogue as a spreadsheet, `parts import FILE.xlsx TO.toml` makes a catalogue file of one.
oilway-input-parts-action = What to do
oilway-input-parts-what = A kind, a part, a folder or a file
oilway-input-parts-to = The file to write on import
oilway-parts-of-what = parts { $action } needs to know of what.
oilway-parts-of-what-cure = `oilway parts --help` shows each form.
oilway-parts-sound = { $folder } holds no mistakes; with the house range there are { $count } parts.
oilway-parts-exported = { $count } parts are in { $file }.
oilway-parts-imported = { $count } parts of { $file } are in { $to }.
oilway-no-kind = There is no kind of part { $wanted }.
oilway-no-kind-cure = `oilway parts list` names the kinds.
oilway-no-part = There is no part { $id }.
oilway-no-part-cure = `oilway parts list KIND` names the parts of a kind.
oilway-kinds-foot = `oilway parts list KIND` names the parts of one.
oilway-no-price = no price
oilway-part-id = part
oilway-part-price = price
oilway-part-source = data from
oilway-part-ports = Ports
oilway-port-shipped = comes with { $with } in it
oilway-yes = yes
oilway-no = no

# Metering

oilway-verb-meter = Choose the sections of dividers exactly, for questions in a file
oilway-verb-meter-about = The file is JSON: questions of one divider each, with demands, bands and piston sizes. The cheapest divider is found and proven; where the file holds a proven answer the two are compared, and a difference ends with exit code 4. --all shows the feed of every point.
oilway-input-meter = A file of questions
oilway-progress-meter = choosing sections
oilway-meter-cure = `docs/metering-file.md` shows the form.
oilway-meter-empty = { $file } holds no question.
oilway-meter-differs = { $id }: the answer differs from the proven one in the file.
oilway-meter-question = question
oilway-meter-cost = cost
oilway-meter-period = period
oilway-meter-pistons = pistons
oilway-meter-error = worst error
oilway-meter-proof = proof
oilway-meter-proven = none costs less than { $bound } ({ $steps } steps)
oilway-meter-none = { $id }: no divider. { $reason }
oilway-meter-feeds = { $id }: point, feed, delivered of wanted
oilway-meter-one = one outlet of { $size } mm³
oilway-meter-joined = both outlets of a piston of { $size } mm³, joined
oilway-meter-teed = outlets of { $sizes } mm³, led together
oilway-meter-faults = The question is at fault: { $faults }.
oilway-meter-piston-count = It would take { $fewest } to { $most } pistons; { $allowed_fewest } to { $allowed_most } are allowed.
oilway-meter-band = Points { $first } and { $second } accept volumes in a ratio of { $low } to { $high }; no two volumes on offer are in such a ratio.
oilway-meter-period-range = No period of the range serves { $points ->
   *[other] point { $points }
 }.
oilway-meter-no-common-period = The points { $points } have no period in common; without any one of them there would be one.
oilway-meter-unpaired = Outlets of the sizes number { $sizes } stay without a partner.
oilway-meter-spent = The effort was spent before there was an answer; none costs less than { $bound }.
oilway-meter-spent-found = The effort was spent before there was a proof; the best so far costs { $cost }, none costs less than { $bound }.
oilway-fault-points = { $count } points, where 1 to { $most } are taken
oilway-fault-sizes = { $count } sizes, where 1 to { $most } are taken
oilway-fault-no-demand = point { $point } needs nothing
oilway-fault-band = the band of point { $point } runs from { $low } % to { $high } %
oilway-fault-no-volume = size { $size } has no volume
oilway-fault-unknown-size = point { $point } keeps size { $size }, which is not in the list
oilway-fault-not-offered = point { $point } keeps a feed that is not on offer
oilway-fault-pistons = { $fewest } to { $most } pistons are allowed, which is none
oilway-fault-period = no multiple of { $step } s lies between { $shortest } s and { $longest } s
oilway-fault-feeds = so many outlets in one feed give more feeds than can be tried; combine fewer

# Manual, completions, schemas

oilway-verb-completions = Print what a shell needs to complete command lines
oilway-verb-completions-about = Put the output where your shell looks for completions.
oilway-input-shell = The shell
oilway-verb-manual = Print the manual page of oilway or of a verb
oilway-verb-manual-about = With --out it writes all pages into a folder.
oilway-input-verb = The verb
oilway-input-manual-out = A folder for all pages
oilway-verb-schema = Print what the JSON of a verb holds, as JSON Schema
oilway-verb-schema-about = Without a verb it names the schemas; with --out it writes all of them into a folder.
oilway-input-schema = The verb, or problems
oilway-input-schema-out = A folder for all schemas
oilway-no-verb = There is no verb { $name } here.
oilway-no-verb-cure = `oilway help` and `oilway schema` name what there is.

# Design and check

oilway-verb-demo = Show a whole job: 34 points of a dairy, from the survey to the sheets
oilway-verb-demo-about = It writes the job and all its sheets into ./out (or --out) and prints the one-page answer. The job is invented; copy it and change it as you like.
oilway-input-demo-out = Where to write; without it ./out
oilway-demo-is-there = { $file } is there and is not the demo's job.
oilway-demo-is-there-cure = Name another folder with --out; nothing of yours is written over.
oilway-demo-next = Ask further, for example:
oilway-verb-design = Make every open choice of a job, work everything out, and write the sheets
oilway-verb-design-about = It prints the one-page answer: what must be read first, the verdict with its margin, the numbers that carry it, what to look after, and the assumptions that weigh most. Choices that the job gives, or its lock file pins, are kept and checked. The exit code is the verdict.
oilway-input-out = Write every sheet as text, the parts list as a table and the whole answer as JSON into this folder
oilway-input-sheet = Print this sheet instead of the answer
oilway-input-pin = Pin every choice in the lock file beside the job
oilway-input-design-reopen = Make a pinned choice anew in this run: a place as in the lock file, or all
oilway-written = Written: { $files }.
oilway-parallel-no-valve = The catalogue holds no metering valve for this lubricant, so that a parallel single line cannot be judged.
oilway-parallel-no-valve-cure = Add one to the catalogue, or leave the principle open.
oilway-parallel-works-cure = oilway designs series progressive systems; of a parallel single line it judges only whether the lines recharge. Leave the principle open for a design.
oilway-parallel-refused-cure = Leave the principle open: a series progressive system needs no recharging.
oilway-verb-check = Judge the finished design by rules that share nothing with the designer
oilway-verb-check-about = Every finding says what is found, its numbers, the source of the rule, the cure and what would turn it; STOP comes first. Given choices are judged like the tool's own. The exit code is the verdict.
oilway-verb-ladder = Draw all pressures of a system on one scale
oilway-verb-ladder-about = The working band on the coldest, usual and hottest day, the stall pressure, the burst band of the disc and the rating of what it protects: the window is open or shut at a glance.

# Explanations

oilway-verb-explain = Explain a rule, a caution, a formula or an assumption
oilway-verb-explain-about = Without a name it lists the rules of the checker. Cautions are named like S30, formulas like pipe-flow/start-pressure, assumptions like assume-rest-factor.
oilway-input-rule = The rule, caution, formula or assumption
oilway-rules-foot = { $count } rules. `oilway explain RULE` tells one in full.
oilway-rule = { $id }: { $title }
oilway-rule-finds = What it finds
oilway-rule-why = Why it matters
oilway-rule-example = Example
oilway-caution = { $id }: { $hazard }
oilway-caution-when = Stands where: { $trigger }
oilway-caution-rule = Behind it: { $rule } ({ $standing })
oilway-assumption-taken = Taken where nobody said: { $value }, within { $span }.
oilway-no-rule = There is no rule, caution, formula or assumption { $wanted }.
oilway-no-rule-cure = `oilway explain` lists the rules.

# What if

oilway-verb-what-if = Change values in memory and see before and after
oilway-verb-what-if-about = The job file stays as it is. A place is written as the assumptions and the lock file write it: pause, air.lowest, place.washer.coldest, point.washer chain 1.duty, line.washer.1.conduit, divider.washer.sections, package.disc. The exit code is the verdict after the change.
oilway-input-changes = Values to change
oilway-no-change-pair = "{ $text }" gives no value.
oilway-no-change = There is nothing to change.
oilway-no-change-cure = Name a place and its value: air.lowest='5 bar'.
oilway-stop = STOP: { $at }: { $what }
oilway-same-verdict = The verdict stays: { $verdict }.
oilway-other-verdict = The verdict turns from "{ $before }" to "{ $after }".
oilway-before = before
oilway-after = after
oilway-changed-choices = Choices that come out differently
oilway-choice-changed = { $at }: { $before } becomes { $after }
oilway-choice-new = { $at }: { $after } is added
oilway-choice-gone = { $at }: { $before } goes
oilway-new-findings = New findings
oilway-gone-findings = Findings that go
oilway-finding = { $rule }, { $at }: { $what }
oilway-name-peak = highest pressure that a path asks, coldest day
oilway-name-event = time of an event, coldest day
oilway-name-window-low = window of the disc from
oilway-name-window-high = window of the disc to
oilway-name-use = what the system uses
oilway-name-reserve = time from the low-level signal to empty

# The cold start over the telephone

oilway-verb-cold-start = Tell on the telephone whether a line of grease starts today, and how cold it may get
oilway-verb-cold-start-about = At most six boxes, written name=value; each may be missing, unknown (?) or a range: temperature, lubricant (a name of the library, or a class such as 'NLGI 2') or yield (measured after rest, today or at yield_at), length, bore or tube ('10 x 1', 'half inch tube'), pressure or ratio and air, kind (one line, progressive, parallel). What a question asks for has a box too: halving, rest, efficiency, end, reset. The exit code is the verdict.
oilway-input-cold-values = What is known, each with its unit
oilway-cold-allowed = It may be from { $low } to { $high }, a range, or unknown.
oilway-cold-either = { $one } and { $other } say the same thing twice.
oilway-cold-either-cure = Give the one that is known better and leave the other out.
oilway-cold-oil = { $name } is an oil, and an oil has no stress below which nothing moves.
oilway-cold-oil-cure = Write a job for it and ask `oilway design`; there its viscosity on the coldest day is counted.
oilway-cold-no-lubricant = No grease "{ $name }" is in the library, and no class of that name flows in a line.
oilway-cold-no-lubricant-cure = Write a class from NLGI 000 to NLGI 3, or yield= with a measured stress, or ?.
oilway-cold-kind = "{ $name }" is no kind of system.
oilway-cold-kind-cure = Write kind=progressive, kind=parallel or kind='one line'.
oilway-cold-no-bore = A tube of { $outside } with a wall of { $wall } has no bore.
oilway-cold-no-bore-cure = Write outside diameter, then wall: 10 x 1.

oilway-cold-stop = STOP: never open the regulator further and bring no flame to a line. A stuck line is under stored pressure even when its gauge shows nothing; full air bursts the disc or the oldest hose. Open no joint before the pressure is off; read the cautions S20 and S31.
oilway-cold-verdict = Verdict: { $verdict }.
oilway-cold-usual = With the usual values of what is not known: { $said }
oilway-cold-starts = It starts at { $temperature }: it needs about { $need } to move and the pump gives { $have }; it will not start below about { $coldest }.
oilway-cold-starts-always = It starts at { $temperature }: it needs about { $need } to move and the pump gives { $have }; the cold is not its limit.
oilway-cold-will-not = It will not start below about { $coldest }; at { $temperature } it would need about { $need } to move, and the pump gives { $have }.
oilway-cold-never = It will not start however warm it gets: at { $temperature } it would need about { $need } to move, and the pump gives { $have }.
oilway-cold-stuck = At { $temperature } it would need about { $need } to move and the pump gives { $have }, but what stays in the line after venting keeps the valves from recharging; they recharge down to about { $coldest }.
oilway-cold-stuck-always = At { $temperature } it would need about { $need } to move and the pump gives { $have }, but what stays in the line after venting keeps the valves from recharging, however warm it gets.
oilway-cold-band = Over everything that is not known: needed { $need }, given { $have }; the coldest start is { $best } at best, { $worst } at worst.
oilway-cold-stated = This limit is one of pressure only: the lubricant is stated down to { $stated } and no further.
oilway-cold-down-to = { $temperature }
oilway-cold-beyond = any cold
oilway-cold-not-enough = at no temperature
oilway-cold-remedies = What lasts, and how cold it may get then
oilway-cold-softer = a grease one class softer, or a synthetic one of the same class
oilway-cold-wider = the next wider bore all along
oilway-cold-traced = heat tracing that keeps the line at { $temperature }
oilway-cold-remedy = { $what }: starts down to { $reach }
oilway-cold-remedy-beyond = { $what }: the cold is then no longer the limit
oilway-cold-remedy-not-enough = { $what }: not enough by itself
oilway-cold-hour = In the next hour
oilway-cold-hour-hands = Stop the machine, or lubricate its vital points by hand; let nobody wait for the pump.
oilway-cold-hour-warm = Warm the coldest stretch and the reservoir with warm air, warm water in bags or a heating mat, never with a flame; keep hoses and plastic tubes below what they stand.
oilway-cold-hour-wait = Leave the regulator as it is, try again as the line warms, and look for grease at the last point before the machine runs on.
oilway-cold-plan = For the maintenance plan: change to the winter grade before nights below { $plan }.
oilway-cold-plan-wrong = For the maintenance plan: this line starts too late even for cool nights of summer; it wants another grease, bore or heating before the winter.
oilway-cold-plan-open = Until that question is answered, rely on no temperature.
oilway-cold-plan-worst = Until that question is answered, count with { $worst }.
oilway-cold-counted = Counted: the stress along the line and what the far end asks. Not counted: fittings and climbs; and to keep grease moving takes more than to start it.
oilway-cold-taken = { $name }, { $span }: { $what }
oilway-cold-taken-said = as told, no better known

oilway-cold-ask-temperature = How cold is the coldest stretch of the line now? Put a thermometer on the tube.
oilway-cold-ask-yield = Which grease is it: name, NLGI class, and what yield stress or flow pressure does its maker give in the cold?
oilway-cold-ask-yield-at = How cold was the grease when its yield stress was measured?
oilway-cold-ask-halving = How much stiffer does this grease get in the cold: has its maker yield stresses or flow pressures at two temperatures?
oilway-cold-ask-rest = How long did the line stand, and what pressure does it take to start after such a rest, against that in motion?
oilway-cold-ask-length = How long is the line to the farthest point? Pace it out.
oilway-cold-ask-bore = What is the bore: outside diameter and wall of the tube, or what is printed on the hose?
oilway-cold-ask-pressure = What is the highest pressure that the pump gives? It stands on its plate.
oilway-cold-ask-ratio = What ratio stands on the plate of the pump?
oilway-cold-ask-air = What does the air gauge at the pump show while it tries? Read it, do not turn it.
oilway-cold-ask-efficiency = What pressure does the pump reach against a shut valve, at that air? The last record of it will do; make no such trial on a stuck line.
oilway-cold-ask-end = What pressure do the dividers, valves and bearings at the far end ask? The last record on a warm day shows it.
oilway-cold-ask-reset = Below what pressure do the metering valves recharge? It stands in their data.
