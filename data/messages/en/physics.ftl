# Names of formulas, their bounds and their warnings.

## Types of burst discs

physics-disc-forward-solid = forward-acting disc of solid metal, domed
physics-disc-forward-scored = forward-acting disc, scored
physics-disc-forward-composite = forward-acting composite disc, slotted with a seal
physics-disc-flat = flat disc, metal or composite
physics-disc-reverse-scored-liquid = reverse-acting disc, semicircular score, made for liquid
physics-disc-reverse-cross-scored = reverse-acting disc, cross-scored or with a knife
physics-disc-graphite = graphite disc, impregnated, one piece
physics-disc-foil-plug = foil disc in a screw plug

## Air drives and air valves

physics-drive-spring-return = air motor with spring return
physics-drive-double-acting = double-acting air motor without its own reversing
physics-drive-self-reversing = air motor that reverses itself

physics-valve-two-two = two-port valve
physics-valve-three-two-closed = three-port valve, closed at rest
physics-valve-three-two-open = three-port valve, open at rest
physics-valve-four-two = four-port valve with spring return
physics-valve-five-two = five-port valve with spring return
physics-valve-five-two-two-coils = five-port valve with two coils
physics-valve-five-three-shut = five-port valve with three positions, all shut in the middle
physics-valve-five-three-vented = five-port valve with three positions, outlets vented in the middle
physics-valve-five-three-pressed = five-port valve with three positions, outlets under pressure in the middle

## What a pair of drive and valve does

physics-air-runs = It runs while the valve is switched and rests without pressure.
physics-air-runs-switched = It makes one stroke each time the valve is switched over; the control must switch it for every stroke. At rest one chamber stays under pressure.
physics-air-runs-one-outlet = It runs as long as only the outlet that vents at rest is connected and the other outlet is plugged.
physics-air-one-stroke-held = It makes one stroke and stays pressed: nothing lets the air out again. A line that must be vented is never vented and doses once.
physics-air-one-stroke-never-back = It makes one stroke and stops: the second chamber is never driven, so the piston does not come back.
physics-air-pressed-at-rest = It never stops pushing: the chamber is under pressure at rest and whenever the signal fails.
physics-air-never-stops = It never stops: the motor runs at rest and whenever the signal fails.
physics-air-stays-on-power-cut = It runs with a pulse on each coil, but stays where it was when the power fails: perhaps pressed.
physics-air-half-stroke-on-power-cut = It runs with a pulse on each coil, but stays where it was when the power fails, in the middle of its cycle.
physics-air-runs-on-after-power-cut = It starts and stops with a pulse on each coil, but runs on when the power fails while it runs.
physics-air-stops-under-pressure = It stops, but the air stays in the motor: the piston makes one more stroke when a line is opened.
physics-air-locked-in-the-middle = It runs between the outer positions. In the middle both chambers are shut in and the piston moves when a line is opened.
physics-air-free-in-the-middle = It runs between the outer positions. In the middle both chambers are vented and the piston stands wherever it was.
physics-air-creeps-at-rest = It does not stay at rest: with both chambers under pressure the larger face wins and the piston creeps.

physics-air-cure-three-two-closed = Fit a three-port valve that is closed at rest: 1 to the supply, 2 to the motor, 3 left open through a silencer.
physics-air-cure-five-two = Fit a five-port valve with spring return: 1 to the supply, 2 and 4 to the two chambers, 3 and 5 left open through silencers.
physics-air-cure-ports-three = Plug nothing: 1 to the supply, 2 to the motor, 3 left open through a silencer. Keep the breather of the other side clean.
physics-air-cure-ports-four = Plug nothing: 1 to the supply, 2 and 4 to the two chambers, 3 left open through a silencer.
physics-air-cure-ports-five = Plug nothing: 1 to the supply, 2 and 4 to the two chambers, 3 and 5 left open through silencers.
physics-air-cure-ports-four-as-three = 1 to the supply, 4 to the motor, plug 2, leave 3 open through a silencer. Never plug the exhaust.
physics-air-cure-ports-five-as-three = 1 to the supply, 4 to the motor, plug 2, leave 5 open through a silencer and 3 open. Never plug the exhaust of the outlet in use.

physics-air-caution = Before any hose is loosened: shut off the air and lock it, let the air out of both sides of the motor, bring the lubricant to zero and read both gauges. Trapped air moves the piston without warning. The rules of the place and a licensed person have the last word.

## Why measured rows give no flow curve

physics-fit-too-few = A flow curve needs at least { $wanted } different shear rates, here are { $got }; measure more or give yield stress, consistency factor and index.
physics-fit-not-positive = Row { $row } has a shear rate or a stress that is not above zero; correct or leave out the row.
physics-fit-not-rising = The stress does not rise with the shear rate; check the order of the columns and whether the grease slipped at the wall.
physics-fit-index = The index that fits best is { $index }, at the end of what a grease can have ({ $low } to { $high }); check the units of the columns.

# points

## Why a point has no demand, and what to do

physics-point-missing = Nothing is known of { $field }, and without it no rule gives a number.
physics-point-missing-cure = Write { $field } with its unit, or "?" to go on with the usual span; or state under given what the machine's manual says.
physics-point-no-number = The rule { $rule } gives no usable number for these values.
physics-point-no-number-cure = Check the units of the point's fields, or state under given what the machine's manual says.
physics-point-too-fast = At { $speed } a bearing of { $bore } bore is beyond the greasing rule: its interval would shrink to nothing.
physics-point-too-fast-cure = Use oil, ask for the interval in the bearing's own data and state it under given, or check bore and speed.
physics-point-nut-too-narrow = The nut's bore of { $bore } is not wider than the root of the screw, about { $root }.
physics-point-nut-too-narrow-cure = Check nut_bore and diameter, or leave nut_bore out.
physics-point-gear-too-fast = The pitch line runs at { $speed }; the table for spraying from time to time ends at { $limit }.
physics-point-gear-too-fast-cure = Plan dip or circulation by the gear builder's instruction, and state the amount under given.
physics-point-gear-grease = The rule for enclosed gears counts the heat that circulating oil carries away; grease carries none.
physics-point-gear-grease-cure = Choose an oil for this system, or leave the gear out and fill its housing by the builder's instruction.
physics-point-chain-grease = Grease does not reach the joints of a roller chain in normal use.
physics-point-chain-grease-cure = Give chains an oil system of their own; or state under given what the chain's maker asks for.
physics-point-coupling-oil = The rule for gear couplings is a fill of grease; for a continuous feed of oil no rule is known here.
physics-point-coupling-oil-cure = Ask the coupling's builder for the oil flow at this speed and misalignment and state it under given.
physics-point-coupling-depth = Teeth { $depth } deep do not fit into a bore of { $bore }: twice the depth is more than the bore.
physics-point-coupling-depth-cure = Check depth and housing_bore; the depth counts on the radius.

## Remarks beside a demand

physics-point-duty = It moves { $share } of the running time; { $standing } of its rate would be needed even at rest, for sealing and against washing-out. The larger of the two counts.
physics-point-bore-outside = Bore { $bore } is not smaller than outside { $outside }: one of them is wrong, and so is this demand.
physics-point-small-swing = A swing of { $swing } does not carry grease along the race: shorten the interval by what the parts show, and turn the bearing a full turn now and then if it can be.
physics-point-methods = The interval of { $used } follows from the temperature rule with factors for dirt, water and vibration where they are named. The temperature rule alone gives { $alone }, the factor-product method { $product }: between such methods a factor of two is usual.
physics-point-oil-band = Middle of the band { $band } for the least oil of a bearing; look at its temperature and at what leaves it.
physics-point-pin = The film is renewed once in a shift; the rule for plain bearings would renew grease every 4 h and give twice as much. Practice asks for one shot a shift at least.
physics-point-spline = The cylinder at half height of the teeth stands for their flanks: a little more than those of usual splines.
physics-point-full-film = A full film of oil would lose { $flow } at its ends, lightly to heavily loaded. More than that is of no use, and { $share } of it still carries in moderate service.
physics-point-carriage = From one instruction for a small carriage, scaled by size: an order of magnitude. The guide's own data go before.
physics-point-short-stroke = A stroke of { $stroke } does not spread the lubricant: insert one of at least { $wanted } at each lubrication.
physics-point-rough-travel = For water or dirt like here take the short end of the travel between two lubrications, about { $travel }, unless the builder says otherwise.
physics-point-screw = The nut's free space by proportions, renewed after the travel of a linear guide and at the latest after 500 h: an estimate. The screw's own data go before.
physics-point-screw-oil = By analogy: each loaded circuit counted as a row of a bearing, middle of the band { $band }. No rule for screws was found.
physics-point-slewing-ring = No published rule was found. This project's own: the film of the raceway renewed every 40 h with grease, every 10 h with oil, more often in dirt, water and heat. Turn the ring while it is greased; the builder's figure goes before.
physics-point-spray-time = Each spraying must last { $time }, one to two turns of the wheel.
physics-point-gear-table = The standard's table covers wheels of { $wheels } and faces of { $faces }; smaller gears get what it gives the smallest, larger ones the same rise carried on. That is outside the standard.
physics-point-gear-circulates = This oil circulates and comes back to a tank. It is no demand for a system whose oil is lost at the point.
physics-point-chain-drip = At { $speed } a slow drip feed would take { $flow } for each strand: shots need far less.
physics-point-chain-fast-drip = At { $speed } a fast drip feed would take more than { $flow } for each strand; shots at long intervals are a compromise.
physics-point-chain-spray = At { $speed } chains are sprayed or run in a bath; shots at long intervals do not carry the heat away.
physics-point-coupling = The grease of a coupling is changed, not topped up, and a turning coupling has no place for a line: a mean rate for comparison only. Lock the drive before opening it.
physics-point-rope = The interval is found by inspection. Dress at a sheave, on the outside of the bend; never dress a rope that drags through soil. Keep hands away from a moving rope.
physics-point-as-told = No amount was stated, and no rule fits: this is a guess of wide span. Look it up in the machine's manual and state it under given.

## How a number came to be that no formula gives

physics-point-half-angle = half of the whole swing
physics-point-capped = the vibration factor, smaller by as much as the longest interval cuts off
physics-point-usual-rows = two rows for spherical roller bearings, else one
physics-point-first-fill = 40 per cent of the free space, the middle of what is customary
physics-point-radial = half of the clearance on the diameter
physics-point-faces = one face times the number of faces
physics-point-screw-root = diameter less 0.8 of the ball, by usual proportions
physics-point-nut-bore = diameter and half of the ball, by usual proportions
physics-point-one-circuit = one loaded circuit, the least
physics-point-coupling-root = bore less twice the depth
physics-point-meshes = one mesh times the number of meshes
