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
