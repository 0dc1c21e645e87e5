# The sheets: headings, columns, sentences.

# Words of the writer
documents-alone = { $value }
documents-none = –
documents-tick = [ ]
documents-stop = STOP: { $what }
documents-signal-warning = WARNING
documents-signal-caution = CAUTION
documents-caution = { $signal } { $id }, { $hazard }: { $text } ({ $rule }; standing: { $standing })
documents-unknown-caution = The caution { $id } is not in the list of cautions; find it before work begins.
documents-closing = Pressures in this system can inject lubricant through the skin and can stay after the pump stops. Isolate, lock, relieve, prove zero, then work. Whoever is hit by a jet goes to a hospital at once, without waiting for pain. Local codes, plant rules and licensed persons have the last word over this paper.

# Titles
documents-title-answer = { $job }: the answer on one page
documents-title-delivery = { $job }: demand and delivery
documents-title-lines = { $job }: lines
documents-title-package = { $job }: pump package
documents-title-ladder = { $job }: pressure ladder
documents-title-ports = { $job }: port plan
documents-title-build = { $job }: build order
documents-title-parts = { $job }: parts list
documents-title-settings = { $job }: settings
documents-title-findings = { $job }: findings
documents-title-cautions = { $job }: cautions
documents-title-assumptions = { $job }: assumptions
documents-title-reasons = { $job }: why each choice was made

# Headings
documents-head-numbers = The numbers that carry it
documents-head-cold = The coldest day
documents-head-look-after = What to look after
documents-head-turns = What would turn the verdict
documents-head-raised = Raised above what the rule asks
documents-head-stations = By station
documents-head-ages = Dose and age
documents-head-notes = Remarks
documents-head-worst = The worst paths, as seen at the pump
documents-head-paths = Every path in motion
documents-head-pump = What the pump can do
documents-head-supply = Supply
documents-head-divider = Divider { $name }: { $part }
documents-head-bench = At the bench
documents-head-package-ports = The package
documents-head-air = Air side
documents-head-dividers = Dividers
documents-head-lines = Lines
documents-head-electric = Signals
documents-head-fill = Filling
documents-head-start = First start
documents-head-record = Bag and record
documents-head-spares = Spares
documents-head-seals = Seals
documents-head-gauge = What the gauge at the pump reads
documents-head-signals = What the signals mean
documents-head-stops = Must not be built or started like this: { $number }
documents-head-cautions = Works, but somebody must know or watch: { $number }
documents-head-findings-notes = Good to know: { $number }
documents-head-taken-words = Words taken where nobody knew

# Columns
documents-column-age = Age on arrival
documents-column-age-tail = Age in its own line
documents-column-article = Article
documents-column-asks = Asks
documents-column-assumed = What is assumed
documents-column-bore = Bore
documents-column-chosen = Chosen
documents-column-content = Content
documents-column-delivered = Delivered
documents-column-description = Description
documents-column-done = Done
documents-column-dose = Dose
documents-column-face = Face
documents-column-formula = Rule asks
documents-column-goes-in = Goes in
documents-column-item = Item
documents-column-joint = Joint
documents-column-joints = Joints
documents-column-length = Length
documents-column-line = Line
documents-column-meaning = Meaning
documents-column-moment = When
documents-column-number = Number
documents-column-of-required = Of required
documents-column-of-total = Of total
documents-column-out-first = Comes out first
documents-column-outlet = Outlet
documents-column-part = Part
documents-column-point = Point
documents-column-points = Points
documents-column-port = Port
documents-column-position = Position
documents-column-pressure = Pressure
documents-column-price = Price
documents-column-quantity = Quantity
documents-column-range = Range
documents-column-rating = Rated
documents-column-required = Required
documents-column-rise = Rise
documents-column-room = Room
documents-column-rule = Rule
documents-column-seal = Seal
documents-column-season = Day
documents-column-section = Section
documents-column-serves = Serves
documents-column-setting = Setting
documents-column-stall = Stall
documents-column-station = Station
documents-column-tail = Own line holds
documents-column-thread = Thread
documents-column-tube = Tube or hose
documents-column-turns = Turns at
documents-column-unit = Unit
documents-column-unit-price = Each
documents-column-value = Value
documents-column-weight = Weight
documents-column-what = What
documents-column-where = Where
documents-column-why = Why
documents-total = Total
documents-total-incomplete = Total of the priced lines only

# Seasons and verdicts
documents-season-cold = coldest day
documents-season-normal = usual day
documents-season-hot = hottest day
documents-verdict-works = It works.
documents-verdict-care = It works with care.
documents-verdict-not = It will not work.
documents-verdict-unknown = Nobody can tell yet: a fact is missing.

# Parts and places
documents-item = { $what } (item { $item })
documents-item-unlisted = { $what } (article { $id })
documents-at-place = { $name }
documents-at-package = package
documents-at-air-line = air line
documents-at-relief-port = relief port
documents-at-holder = disc holder
documents-at-spares-bag = spares bag
documents-at-gauge-port = gauge port
documents-at-divider = divider { $name }
documents-at-divider-inlet = inlet of divider { $name }
documents-at-point = point { $name }
documents-at-line = line to { $name }
documents-at-line-start = start of the line to { $name }
documents-at-line-meets = where { $from } meets { $to } on the line to { $name }
documents-at-line-stretch = where { $from } meets { $to } at the start of stretch { $stretch } of the line to { $name }
documents-at-stretch = stretch { $stretch } of the line to { $name }
documents-conduit-tube = tube
documents-conduit-hose = hose
documents-conduit-other = line
documents-thing-package = the package
documents-thing-block = port block
documents-thing-pump = pump
documents-thing-reservoir = reservoir
documents-thing-regulator = air regulator
documents-thing-valve = air valve
documents-thing-disc = burst disc
documents-thing-holder = disc holder
documents-thing-gauge = gauge
documents-thing-controller = controller
documents-thing-inlet = inlet line
documents-thing-discharge = discharge line
documents-thing-air = the plant's air
documents-thing-lubricant = lubricant
documents-thing-control = control
documents-thing-pause = pause
documents-thing-cycles = cycles of an event
documents-thing-time-out = time-out
documents-names = { $names }
documents-names-run = { $first } to { $last }
documents-names-more = { $names }; { $more ->
    [one] one more
   *[other] { $more } more
}
documents-at-inlet-line = inlet line
documents-at-discharge-line = discharge line
documents-at-port = port “{ $port }” of the { $part }
documents-at-times = { $place }, { $times } times
documents-at-more = { $places }; { $more ->
    [one] one more place
   *[other] { $more } more places
}
documents-times = { $times } times
documents-at-temperature = { $temperature } in { $place }
documents-rated = { $what }: { $rating }

# One-page answer
documents-principle = A series progressive system: one pump feeds { $points ->
    [one] one point
   *[other] { $points } points
} with { $lubricant } through { $dividers ->
    [one] one divider
   *[other] { $dividers } dividers
}, one outlet after the other. { $switches ->
    [0] No divider has a cycle switch: a blocked line shows at the gauge only.
    [one] One divider has a cycle switch: a blocked line stops its divider, and the missing signal shows it.
   *[other] { $switches } dividers have a cycle switch: a blocked line stops its divider, and the missing signal shows it.
}
documents-margin = Tightest on the { $day }: the worst path asks { $need }, the pump stalls at { $stall }; { $room } stay.
documents-margin-lacking = On the { $day } the worst path asks { $need }, but the pump stalls at { $stall }: { $lacking } are lacking.
documents-number-peak = Highest need on the coldest day
documents-number-stall = Pump stalls at
documents-number-event = One lubrication event takes
documents-number-coldest = Starts down to
documents-number-disc = Burst disc
documents-number-window = Window for the disc
documents-number-weakest = Weakest protected part
documents-number-use = Consumption while the machine runs
documents-number-refill = Refill every
documents-number-reserve = From low-level signal to empty
documents-disc = marked { $marked }, tolerance { $tolerance }
documents-no-disc = none
documents-window-open = open, from { $low } to { $high } marked pressure
documents-window-shut = shut: to live it would need at least { $low }, to protect at most { $high }
documents-cold = The system starts down to { $temperature } in { $place }, { $reserve } below the coldest day of the job. What would move that limit:
documents-remedy = { $what }: down to { $temperature }
documents-cold-stated = these are limits of pressure only: { $whose } is stated down to { $temperature } and no further
documents-remedy-beyond = { $what }: the cold is then no longer the limit
documents-look-refill = Refill every { $refill }; from the low-level signal { $reserve } are left.
documents-look-air = Leave the air at { $setting } and lock the regulator; above { $highest } the burst disc does not live.
documents-look-disc = When the disc has burst, find the cause first; then fit a new disc with the same mark. { $spares ->
    [0] No spare lies in the bag.
    [one] One spare lies in the bag.
   *[other] { $spares } spares lie in the bag.
}

# Delivery
documents-rule = { $rule }
documents-rule-given = given: { $place }
documents-rule-given-somewhere = given
documents-remark = { $points }: { $remark }

# Lines
documents-line-to = to { $name }
documents-line-inlet = pump inlet
documents-line-discharge = disc discharge
documents-asks-start = to start, just stopped
documents-asks-start-rested = to start after rest
documents-asks-moving = to keep moving
documents-asks-residual = what remains after stop
documents-worst-words = A path starts when its need is below the stall pressure of the pump. What remains after the stop stays in the line until it is vented.

# Package
documents-number-stall-possible = Stall if the regulator fails
documents-number-flow = Highest flow
documents-number-rate = Strokes at that flow
documents-number-free-air = Free air of one cycle
documents-number-fill-time = One fill takes
documents-number-fill-time-available = One fill has
documents-number-mounting = Mounting
documents-number-place = Place
documents-number-air-setting = Air setting
documents-number-air-highest = Highest air setting
documents-number-feed = Pressure that feeds the inlet in the cold
documents-number-air-per-hour = Free air in an hour of running, mean
documents-number-relieving = Pressure at the pump while it relieves
documents-number-stays = Pressure that stays in the main after a burst
documents-mounting-on-reservoir = on the reservoir
documents-mounting-remote = away from the reservoir, with an inlet line

# Pressure ladder
documents-ladder-sign = Sign
documents-ladder-pressure = Pressure
documents-ladder-what = What it is
documents-ladder-disc = disc
documents-ladder-every-day = every day
documents-ladder-above = { $what } (above the picture)
documents-ladder-in-column = { $column }: { $what }
documents-ladder-working = { $column }: what the paths ask, from the easiest to the worst
documents-ladder-burst = the disc bursts, from the weakest of the lot on a hot day to the strongest on a cold one
documents-ladder-window = window for the marked pressure of a disc
documents-ladder-window-open = The window is open: a disc marked from { $low } to { $high } lives and protects.
documents-ladder-window-shut = The window is shut: a disc that lives would have to be marked { $low } or more, one that protects { $high } or less.
documents-mark-stall = the pump stalls at its setting
documents-mark-stall-possible = stall if the regulator fails and the air is at its highest
documents-mark-marked = marked pressure of the disc
documents-mark-steady = highest steady pressure that the disc stands for long
documents-mark-relieving = pressure at the pump while it relieves
documents-mark-working = highest working pressure at the disc
documents-mark-rating-items = rated: items { $items }
documents-mark-rating = rated: { $parts }

# Port plan
documents-ports-words = Every port is filled, shut with a named part, or open on purpose. Outlets of a divider: number of the section from the inlet on, and L or R as seen from the inlet end with the outlets up.
documents-thread = { $thread } { $sex }
documents-undecided = NOTHING DECIDED: ask before building
documents-adapter = adapter: { $part }
documents-then = { $first }, then { $next }
documents-flows-out = one way: arrow away from the port
documents-flows-in = one way: arrow towards the port
documents-behind-shut-off = behind a shut-off
documents-joint-direct = goes in as it is
documents-outlet-joined = joined inside with the opposite outlet; no line
documents-outlet-bridged = led to outlet { $outlet }
documents-outlet-plugged = PLUGGED: the divider will stop at its first cycle
documents-outlet-open = OPEN: it spills
documents-seal-face = ring on the face
documents-seal-taper = sealant on the thread
documents-seal-npt = sealant on the thread
documents-seal-dry = dry on the thread
documents-seal-metric = ring on the face, or taper
documents-seal-unified = O-ring in the chamfer
documents-seal-tube = tube fitting
documents-seal-hose = hose end
documents-seal-words = Seals by the family of the thread (ISO 228-1, ISO 7-1, ASME B1.20.1 and B1.20.3, ISO 261, ASME B1.1; partly from memory). Ring on the face: nothing on the thread. Sealant on the thread: the first two turns bare. A taper metric end seals on its thread, a parallel one by its ring. Tube fitting and hose end: by the turns of their maker, who has the last word for seal and torque.

# Build order
documents-out-of = { $what } out of port “{ $port }”
documents-step-lay-out = Lay the parts out against the parts list, item by item.
documents-step-take-out = { $part }: take out what came in its ports: { $what }.
documents-step-supplied-disc-out = The pump as bought brings the burst disc { $id }. It is the wrong one here: take it out and keep it away from this system.
documents-step-supplied-disc-right = The pump as bought brings the burst disc { $id }, which is the right one: read its mark before you trust it.
documents-step-no-disc = No burst disc and holder are in this design: ask before building.
documents-step-disc = Put { $disc } into { $holder }. Read its mark: { $marked } at { $temperature }, tolerance { $tolerance }. Record number: ____________  Date (year-month-day): ____-__-__  Seat clean, right side up.
documents-step-mount-on-reservoir = Set the port block and the pump on the reservoir.
documents-step-mount-remote = Set the port block and the pump at their place and lead the inlet line from the reservoir, short, wide, without a high point.
documents-step-ports = { $part }: fill the ports.
documents-step-check-valve-out = Check the arrow of the one-way part at { $port }: away from the port.
documents-step-check-valve-in = Check the arrow of the one-way part at { $port }: towards the port.
documents-step-regulator-zero = Set the air regulator to zero before the supply is joined.
documents-step-stack = Divider { $name }: stack { $sections } sections from the inlet on and set their outlets, as below. An outlet that serves nothing is joined, never plugged.
documents-step-cycle-switch = Divider { $name }: mount and wire the cycle switch; move the piston by hand and see the signal.
documents-step-lines = Cut, bend, clean and lay the lines. Blow them through away from people, fill them before they are joined.
documents-step-joints = Join the lines.
documents-step-controller = Wire pump, cycle switches and level switch to { $part }.
documents-step-machine-controller = Wire pump, cycle switches and level switch to the controller of the machine.
documents-step-settings = Set the pause to { $pause }, the event to { $cycles ->
    [one] one cycle
   *[other] { $cycles } cycles
} of the first divider, the time-out to { $time_out }.
documents-step-fill = Fill the reservoir with { $lubricant } through its filling port, without air.
documents-step-bleed = Open the first line end, run lubricant until it is free of air, close it; then the next, outwards from the pump to the last point.
documents-step-air-on = Open the air slowly from zero to { $setting }, watch gauge and first stroke, lock the regulator.
documents-expect = Expect on the { $day }: up to { $peak } at the gauge in motion, { $stall } against a shut line.
documents-step-test = Look over every joint at working pressure, from the side, with eye protection. Bring the pressure to zero before you tighten anything.
documents-step-prove = Prove all { $points } points: lubricant at every end, every cycle switch signals, the alarm comes when a line is shut.
documents-step-spares = Into the spares bag: { $discs } discs of the same mark, rings for { $rings }.
documents-step-record = Sign: built by ____________  tested by ____________  Date (year-month-day): ____-__-__

# Parts list
documents-unit-piece = piece
documents-unit-metre = m
documents-no-price = NO PRICE
documents-unpriced = NOT COMPLETE: { $lines ->
    [one] one line has
   *[other] { $lines } lines have
} no price, so that the total is not the whole: { $lines ->
    [one] item { $items }
   *[other] items { $items }
}.
documents-open = NOT COMPLETE: { $places ->
    [one] one place needs a part or a decision:
   *[other] { $places } places need parts or decisions:
}
documents-open-port = { $port }: nothing is decided.
documents-open-strangers = { $port }: the { $part } does not screw into it as it is; the nipple or the line between them is in no list.
documents-open-joint = { $at }: no fitting joins { $from } and { $to }.
documents-open-thread = { $at }: one end is { $known }, the other is not known; measure its thread.
documents-open-threads = { $at }: neither end is known.
documents-open-outlet = Outlet { $outlet } of divider { $name } is open.
documents-open-conduit = The line to { $line } has a stretch without a tube.
documents-open-cycle-switch = Divider { $name } is to have a cycle switch, and none is part of it.
documents-parts-words = Tubes and hoses are bought in whole metres, with { $allowance } for cutting at every stretch. A part that two ports name is counted once; spares are counted in.
documents-spare-disc = a burst disc is never used again
documents-spare-filter = elements clog
documents-seals-no-article = Seals come by thread and have no article here: order rings for the joints below, and some more.

# Settings
documents-set-pause = Pause
documents-set-pause-why = running time of the machine between two events
documents-set-cycles = Cycles
documents-set-cycles-why = cycles of the first divider in one event
documents-set-time-out = Time-out
documents-set-time-out-why = if the cycles are not counted by then, alarm and stop
documents-set-air = Air at the regulator
documents-set-air-why = locked; never above { $highest }, for the sake of the burst disc
documents-set-air-why-open = locked
documents-gauge-first = First movement after a long rest
documents-gauge-moving = While it pumps
documents-gauge-after = What stays after it stops
documents-gauge-blocked = Against a blocked line
documents-gauge-event = One event lasts
documents-signal-cycle = Cycle switch of { $dividers }: the event is over after { $cycles ->
    [one] one signal
   *[other] { $cycles } signals
} of the first divider.
documents-signal-blocked = No signal within { $time_out }: a line is blocked, the air is missing, or the reservoir is empty. Stop the pump, raise the alarm, do not start again by itself.
documents-signal-no-switch = No divider has a cycle switch: only the gauge and the points show whether lubricant arrives.
documents-signal-level = Low level: { $reserve } are left.
documents-signal-pressure = A gauge that stands above { $highest } at rest or in motion says that something is blocked or colder than in this job.

# Findings
documents-finding = { $at }: { $what }
documents-look-finding = { $at }: { $cure } ({ $what })
documents-turns-each = Each at its own: { $turns }
documents-turns-all = The verdict itself turns only when all { $number } matters of this weight are cured; the sheet of findings lists them.
documents-finding-cure = Cure: { $cure }
documents-finding-turns = Turns: { $turns }
documents-finding-evidence = Numbers: { $evidence }
documents-finding-source = Rule { $rule }; source { $source }, { $place } ({ $standing })
documents-evidence = { $what } { $value }
documents-no-findings = The checker found nothing.

# Assumptions
documents-assumptions-first = What matters most is { $at }: { $what } Find it out first.
documents-assumptions-words = Weight: how far the deciding margin swings over the range, as a share of the pressure available. Where nothing stands under the last column, the verdict holds over the whole range.
documents-no-assumptions = Nothing with a range was assumed.
documents-factor = { $factor }
documents-taken-word = { $point }: { $field } is taken as { $word }

# Cautions by step
documents-step-of-always = At all times
documents-step-of-design = Design
documents-step-of-assembly = Assembly
documents-step-of-commissioning = First start
documents-step-of-handling = Handling lubricant
documents-step-of-service = Service
documents-step-of-document = Papers
