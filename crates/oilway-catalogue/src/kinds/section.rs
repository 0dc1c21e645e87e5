//! Working sections of series progressive dividers.

kind! {
    /// A working section: one piston with two outlets.
    Section, SectionKind = "section", "a working section of a series progressive divider, with two outlets";
    fits: needed Parts("divider"), "the dividers into which it goes";
    volume: needed Quantity(Volume, Positive), "volume that each of its two outlets gives in one cycle";
    joinable: maybe Flag(), "its two outlets can be joined inside, so that one gives both volumes";
    outlet_thread: needed Text(), "thread of its outlets";
}
