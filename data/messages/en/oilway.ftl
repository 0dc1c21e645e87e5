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
