# Quantities: how lists and ranges are said, and what is wrong with a quantity that cannot be read.

list-pair = { $first } and { $second }
list-more = { $first }, { $rest }
choice-pair = { $first } or { $second }
choice-more = { $first }, { $rest }
span = { $low } to { $high }

# What is wrong with a text that should be a quantity. $wanted is one of the names of dimensions below.

read-empty = nothing is written here; { $wanted } is needed, for example { $example }, or ? if it is not known
read-too-long = "{ $text }" has { $length } characters; { $wanted } needs no more than { $most }
read-no-number = "{ $text }" does not begin with a number; write { $wanted } such as { $example }, or ? if it is not known
read-doubtful-comma = "{ $text }" can mean two things; write { $decimal } or { $thousands }
read-missing-unit = "{ $text }" has no unit; write { $examples }
read-unknown-unit = "{ $text }": { $unit } is no unit of { $wanted }; write { $units }
read-misspelt-unit = "{ $text }": { $unit } is no unit of { $wanted }; did you mean { $nearest }?
read-wrong-dimension = "{ $text }": { $unit } measures { $measures }, but { $wanted } is needed; write { $units }
read-absolute-for-gauge = "{ $text }" is an absolute pressure, but a gauge pressure is needed; subtract the surrounding atmosphere, about { $atmosphere }, and write the unit without "abs"
read-gauge-for-absolute = "{ $text }" is a gauge pressure or does not say, but an absolute pressure is needed; add the surrounding atmosphere, about { $atmosphere }, to a gauge pressure and write { $instead }
read-backwards = "{ $text }" runs backwards from { $first } to { $second }; write the lower end first
read-below-nothing = "{ $text }" cannot be: the least is { $least }
read-not-finite = "{ $text }" is too large to calculate with, or divides by nothing; write a finite number
read-bad-tolerance = "{ $text }" has a tolerance that can mean two things or reaches 100 %; write the range, for example { $example }

# Names of dimensions.

dimension-Length = a length
dimension-Area = an area
dimension-Volume = a volume
dimension-Mass = a mass
dimension-Time = a time
dimension-TemperatureDifference = a difference of temperatures
dimension-Pressure = a gauge pressure
dimension-AbsolutePressure = an absolute pressure
dimension-Flow = a volume flow
dimension-Viscosity = a dynamic viscosity
dimension-KinematicViscosity = a kinematic viscosity
dimension-Density = a density
dimension-Consistency = a consistency factor
dimension-ShearRate = a shear rate
dimension-Speed = a speed
dimension-Frequency = a frequency
dimension-Force = a force
dimension-Torque = a torque
dimension-Power = a power
dimension-Angle = an angle
dimension-Ratio = a plain number or a percentage
dimension-Count = a number of things
dimension-Conductance = a sonic conductance
dimension-SpecificHeat = a specific heat capacity
dimension-PerTemperature = a relative change per degree
dimension-PerPressure = a relative change per pressure
dimension-VolumePerLength = a volume per length
dimension-PressurePerLength = a pressure per length
dimension-Voltage = a voltage
dimension-Temperature = a temperature
