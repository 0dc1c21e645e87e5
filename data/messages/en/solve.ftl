# Sentences of the designer: obstacles, reasons, remarks.

# Demand
solve-no-demand = No rule gives a demand: { $reason }. The point gets the floor until somebody decides. { $cure }
solve-raised-fresh = raised so that the { $tail } in its own line are no older than { $age } on arrival
solve-raised-floor = raised to { $floor }, the least that an automatic system gives a point (sealing, freshness, smallest dose; common practice, no source)

# Layout
solve-no-such-line = the catalogue holds no tube or hose { $part }
solve-no-line-at-all = the catalogue holds no { $flexible ->
    [0] tube
   *[other] hose
 } that this job may use
solve-add-line = Add one to the catalogue, or name another part.
solve-add-part = Add one to the catalogue, or name another part.
solve-one-first-divider = { $found ->
    [0] no divider hangs on the pump
   *[other] { $found } dividers hang on the pump
 }; in a series progressive system exactly one does
solve-cure-one-first-divider = Let one divider be fed by the pump and all others by that one.
solve-divider-order = this divider is fed by one that stands after it in the job, or by itself
solve-cure-divider-order = Put the divider that feeds before the one that is fed, and break the circle.
solve-no-points = the job has no lubrication points
solve-cure-no-points = Add points to the survey.

# Metering
solve-divider-below-failed = the divider { $below } below it has no sections yet, so that nobody knows what it takes
solve-cure-below-first = Clear what stands against the divider below first.
solve-divider-serves-nothing = nothing hangs on this divider
solve-cure-serves-nothing = Hang a point or a divider on it, or leave it out.
solve-no-such-divider = the catalogue holds no divider { $part }
solve-no-divider-at-all = the catalogue holds no divider
solve-sections-do-not-fit = no divider on hand takes all of the given sections
solve-cure-sections-do-not-fit = Give sections that fit one divider, or leave the sections open.
solve-section-stranger = a given section serves { $name }, which does not hang on this divider
solve-cure-section-stranger = Check the spelling of { $name }, or hang it on this divider.
solve-section-forgets = none of the given sections serves { $name }
solve-cure-section-forgets = Give { $name } an outlet, or hang it on another divider.
solve-too-many-sections = { $consumers } consumers need at least { $needed } { $needed ->
    [one] section
   *[other] sections
 }; the divider takes { $fewest } to { $allowed }
solve-cure-split-divider = Split the consumers over two dividers, or add a secondary divider.
solve-cure-too-few-sections = Join them to another divider, or add points: with fewer sections no divider cycles.
solve-sizes-against-band = no two section sizes serve { $first } and { $second } inside their bands at once: their volumes must stand as { $low } to { $high } to 1, the sizes offer { $offered }
solve-cure-own-divider = Give the larger or the smaller one a divider of its own, or widen the band.
solve-no-common-period = { $names } cannot be served at one common rhythm with the sizes on hand
solve-period-range = no rhythm that is open serves { $names }; they would be served by a cycle every { $periods }
solve-period-span = { $span }
solve-period-from = { $from } or longer
solve-unpaired = { $outlets ->
    [one] one outlet ({ $volumes }) stays
   *[other] { $outlets } outlets ({ $volumes }) stay
 } without a partner: a section has two outlets, and none may be closed
solve-cure-unpaired = Add a point, allow joined outlets, or lead an outlet back to the reservoir.
solve-effort-spent = the search for sections for { $consumers } consumers took too long and found none
solve-no-sections = no sections on hand serve these { $consumers } consumers
solve-metering-faults = the question to the search for sections cannot be answered: { $faults }
solve-cure-metering-faults = Clear the points named, and split the divider where it has too many.
solve-fault-points = { $count } consumers hang on one divider, { $most } are the most that are looked at
solve-fault-sizes = { $count } section sizes are on hand; it must be one to { $most }
solve-fault-no-demand = { $name } asks for nothing
solve-fault-band = the band of { $name } runs from { $low } to { $high } percent
solve-fault-no-volume = a section of { $volume } gives nothing that can be counted
solve-fault-not-offered = { $name } keeps a section that is not on hand
solve-fault-pistons = the divider takes { $fewest } to { $most } sections
solve-fault-period = the open rhythms run from { $shortest } to { $longest }
solve-fault-feeds = there are { $count } ways to combine outlets, { $most } are the most that are looked at

# Package
solve-point-on-no-divider = this point hangs on no divider of the job
solve-cure-point-on-no-divider = Name the divider that feeds it.
solve-no-such-part = the catalogue holds no { $kind } { $part }
solve-none-in-catalogue = the catalogue holds no { $kind } that suits this job
solve-no-viscosity-line = the two viscosities of the oil give no viscosity line at a temperature of this job
solve-cure-viscosity-line = Check the viscosities at 40 °C and 100 °C; the first must be the larger.
solve-port-exhaust = open on purpose: exhaust air
solve-port-pilot = the signal that switches the valve comes in here, from the machine's control or a hand valve; it is not in the parts list
solve-port-air-supply = the plant's air comes in here
solve-port-discharge = open on purpose: the relief discharges here; lead it away from faces and walkways

# Reasons
solve-kept = kept as given
solve-why-progressive = every outlet gives its share in turn, one signal tells that all of them did, and a blocked line stops the divider and so is noticed
solve-why-not-parallel = every outlet gives its share in turn, whatever remains in the lines. { $parallel }
solve-why-remote = on the reservoir, where the inlet is shortest, unless the job draws an inlet line
solve-why-inlet = the widest line that goes into both ends: suction forgives nothing
solve-why-power = the cheapest pump that cycles by itself, with the setting, disc and bores that go together; one that must be switched for every stroke only where no other serves: the worst path asks { $need }, the pump stalls at { $stall }, and the tighter side of the disc has { NUMBER($room, maximumFractionDigits: 2) } times what it needs
solve-why-reservoir = the smallest that lasts { $wanted }: { $usable } can be used, { $needed } are needed
solve-why-block = the customer's thread family, the place of the mounting, then the price
solve-why-valve = right for the drive, does not throttle it, fits the supply voltage; then the price
solve-why-holder = takes the disc; an indicator where the discharge is open, a port where it is piped
solve-why-gauge = the smallest scale of which pulsating pressure uses two thirds and which the highest burst does not leave
solve-why-controller = the cheapest for the supply voltage; the machine's own has no room
solve-why-divider = the cheapest that takes the sections
solve-why-sections = the cheapest sections that keep every point in its band, proven
solve-why-sections-teed = the cheapest sections that keep every point in its band, with outlets of several sections led together
solve-why-sections-unproven = sections that keep every point in its band; the search ended before it was proven that none are cheaper
solve-why-sections-widened = the sizes on hand cannot keep the bands; the cheapest that keep all lower edges, with the upper edges widened to { NUMBER($factor, maximumFractionDigits: 2) } times
solve-why-line = the cheapest bore with which the worst path holds on the coldest day; lines that many points share are widened first
solve-why-pause = the point that is served least gets what it needs, as far as nobody gets more than his band allows; in whole minutes where the bands leave room

# How numbers come about
solve-how-running-share = times the share of the week in which the machine runs
solve-how-share-of-length = the allowance for fittings, as a share of the length
solve-how-one-row = the one measured row, moved with temperature: the yield stress halves with every 20 K of warming, the consistency goes with the viscosity of the base oil, the index stays
solve-how-between-rows = between the two nearest measured rows: yield stress and consistency with the exponential, the index in a straight line and never beyond what was measured
solve-how-cycles = whole cycles in one pause, such that nobody falls out of his band
solve-how-period = the pause, parted by its cycles
solve-how-event = the cycles of one event, each with the volume of the first divider
solve-how-balance = where what the pump gives and what the path asks meet
solve-how-air-per-hour = the free air of a cycle, times the cycles that an hour's use takes
solve-how-fill-time = the suction share of the shortest cycle
solve-how-inlet-flow = the flow that the feed pressure moves through inlet passage and inlet line
solve-how-flow-limit = the cycles that drive, air passage and inlet allow without load, times the volume of one
solve-how-cold-limit = the temperature at which the hardest path asks just what the pump can give, found by halving
solve-how-discharge = the pipe law along the discharge line at the pump's free flow
solve-how-main-yield = what the yield of the lubricant holds in the line to the farthest divider
solve-how-highest-setting = the steady maximum of the disc over what the pump makes of a bar of air, on the step of the regulator below
solve-range-said = a range in the job

# The cold
solve-remedy-softer = a grease one class softer, or a synthetic one of the same class
solve-remedy-wider = all lines one step of bore wider
solve-remedy-traced = lines and reservoir kept at { $temperature } by heat tracing

# Other principles
solve-parallel-works = A parallel single line would recharge: { $residual } remain after venting, the valve resets below { $reset }.
solve-parallel-refused = A parallel single line does not recharge: on the way to { $point } { $residual } remain after venting, however long one waits, and the valve resets below { $reset }. It would work with a narrowest bore of { $bore }, or with no place on the way colder than { $temperature }.
solve-parallel-refused-always = A parallel single line does not recharge: on the way to { $point } { $residual } remain after venting, however long one waits, and the valve resets below { $reset }. It would work with a narrowest bore of { $bore }; warming alone does not help.
