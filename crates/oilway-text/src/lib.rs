//! What people read: messages kept as data, and the catalogues that turn them into sentences.
