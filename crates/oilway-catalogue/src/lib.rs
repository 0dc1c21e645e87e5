//! What can be bought or drawn: component kinds, parts, ports, tubes and bearings.
