//! A change order: what somebody asked to change, before anyone has done it.

use super::{Day, Text};

/// A change order. Nothing of it is in force until its values stand in their files.
#[derive(Debug)]
pub struct Change {
    /// File stem.
    pub id: String,
    /// What it is about.
    pub title: Text,
    /// Day it was ordered.
    pub date: Day,
    /// Who ordered it, by role or class, without a name.
    pub from: Text,
    /// File, key and value of each change.
    pub values: Vec<Changed>,
}

/// One changed value.
#[derive(Debug)]
pub struct Changed {
    /// File of the job folder.
    pub file: Text,
    /// Key path in its front matter, such as `surfaces.BF-1.width`.
    pub key: Text,
    /// The value as it would be written there.
    pub value: Text,
}
