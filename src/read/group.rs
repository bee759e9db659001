//! What was read from one map, before it becomes a thing of the job.

use crate::job::{Accept, Day, Text};
use crate::quantity::expr::Sort;
use crate::quantity::{Node, Worked};
use crate::source::Span;

/// A value that was read without a fault.
#[derive(Clone, Debug)]
pub enum Item {
    /// An authored value.
    One(Node),
    /// Two authored values: a range, or a time at a reading.
    Two(Node, Node),
    /// A text.
    Text(Text),
    /// A text by language code, English first.
    Words(Vec<(String, Text)>),
    /// A date.
    Day(Day),
    /// Dates.
    Days(Vec<Day>),
    /// Yes or no.
    Yes(bool),
    /// Texts, with the place of the whole list.
    Texts(Vec<Text>, Span),
    /// Corners of an outline.
    Corners(Vec<(Node, Node)>),
    /// Lengths.
    Lengths(Vec<Node>),
    /// Keys of their own.
    Group(Group),
    /// Named groups.
    Map(Vec<(Text, Group)>),
    /// Listed groups.
    List(Vec<Group>),
}

/// The values of one map that had no fault. A key that is missing here was left out, or was reported.
#[derive(Clone, Debug)]
pub struct Group {
    /// Place to point at.
    pub at: Span,
    /// Key and value.
    pub items: Vec<(&'static str, Item)>,
    /// Keys that stand there and could not be read, or whose name was a slip: what is amiss was reported.
    pub faulty: Vec<&'static str>,
}

impl Group {
    fn get(&self, name: &str) -> Option<&Item> {
        self.items.iter().find(|(n, _)| *n == name).map(|(_, item)| item)
    }

    /// True if the author left the key out.
    pub fn lacks(&self, name: &str) -> bool {
        self.get(name).is_none() && !self.faulty.contains(&name)
    }

    /// An authored value.
    pub fn worked<S: Sort>(&self, name: &str) -> Option<Worked<S>> {
        match self.get(name)? {
            Item::One(node) => typed(node),
            _ => None,
        }
    }

    /// Two authored values.
    pub fn pair<A: Sort, B: Sort>(&self, name: &str) -> Option<(Worked<A>, Worked<B>)> {
        match self.get(name)? {
            Item::Two(a, b) => Some((typed(a)?, typed(b)?)),
            _ => None,
        }
    }

    /// A whole number.
    pub fn count(&self, name: &str) -> Option<u32> {
        match self.get(name)? {
            Item::One(node) => node.number().plain().parse().ok(),
            _ => None,
        }
    }

    /// A text.
    pub fn text(&self, name: &str) -> Option<Text> {
        match self.get(name)? {
            Item::Text(text) => Some(text.clone()),
            _ => None,
        }
    }

    /// True if the text is this word.
    pub fn says(&self, name: &str, word: &str) -> bool {
        matches!(self.get(name), Some(Item::Text(text)) if text.text == word)
    }

    /// A text by language.
    pub fn words(&self, name: &str) -> Option<Vec<(String, Text)>> {
        match self.get(name)? {
            Item::Words(words) => Some(words.clone()),
            _ => None,
        }
    }

    /// A date.
    pub fn day(&self, name: &str) -> Option<Day> {
        match self.get(name)? {
            Item::Day(day) => Some(day.clone()),
            _ => None,
        }
    }

    /// Dates; none if left out.
    pub fn days(&self, name: &str) -> Vec<Day> {
        match self.get(name) {
            Some(Item::Days(days)) => days.clone(),
            _ => Vec::new(),
        }
    }

    /// Yes or no; no if left out.
    pub fn yes(&self, name: &str) -> bool {
        matches!(self.get(name), Some(Item::Yes(true)))
    }

    /// Yes or no, if said.
    pub fn said(&self, name: &str) -> Option<bool> {
        match self.get(name)? {
            Item::Yes(yes) => Some(*yes),
            _ => None,
        }
    }

    /// Corners of an outline.
    pub fn corners<S: Sort>(&self, name: &str) -> Option<Vec<(Worked<S>, Worked<S>)>> {
        match self.get(name)? {
            Item::Corners(corners) => all(corners.iter().map(|(x, y)| Some((typed(x)?, typed(y)?)))),
            _ => None,
        }
    }

    /// A list of amounts of one sort; none if left out.
    pub fn each<S: Sort>(&self, name: &str) -> Option<Vec<Worked<S>>> {
        match self.get(name) {
            Some(Item::Lengths(nodes)) => all(nodes.iter().map(typed)),
            _ => Some(Vec::new()),
        }
    }

    /// Texts; none if left out.
    pub fn texts(&self, name: &str) -> Vec<Text> {
        match self.get(name) {
            Some(Item::Texts(texts, _)) => texts.clone(),
            _ => Vec::new(),
        }
    }

    /// Texts with the place of their list.
    pub fn list_at(&self, name: &str) -> Option<(Vec<String>, Span)> {
        match self.get(name)? {
            Item::Texts(texts, at) => Some((texts.iter().map(|t| t.text.clone()).collect(), *at)),
            _ => None,
        }
    }

    /// Keys of their own.
    pub fn group(&self, name: &str) -> Option<&Group> {
        match self.get(name)? {
            Item::Group(group) => Some(group),
            _ => None,
        }
    }

    /// Named groups; none if left out.
    pub fn map(&self, name: &str) -> &[(Text, Group)] {
        match self.get(name) {
            Some(Item::Map(entries)) => entries,
            _ => &[],
        }
    }

    /// Listed groups; none if left out.
    pub fn list(&self, name: &str) -> &[Group] {
        match self.get(name) {
            Some(Item::List(groups)) => groups,
            _ => &[],
        }
    }

    /// The entries of `accept`.
    pub fn accepts(&self) -> Vec<Accept> {
        let one = |(name, group): &(Text, Group)| {
            Some(Accept { finding: name.clone(), value: group.text("value"), by: group.text("by")?, because: group.text("because")? })
        };
        self.map("accept").iter().filter_map(one).collect()
    }
}

/// The tables fix every dimension, so that this never fails; checked all the same, because a wrong row in a
/// table must not end in a panic over an author's file.
fn typed<S: Sort>(node: &Node) -> Option<Worked<S>> {
    (node.value().dim == S::DIM).then(|| Worked::new(node.clone()))
}

/// `None` if one of them is: a thing with a part left out would be computed wrong.
pub fn all<T>(items: impl IntoIterator<Item = Option<T>>) -> Option<Vec<T>> {
    items.into_iter().collect()
}
