//! What a result is, said once where its field is declared.
//!
//! `results!` takes a struct of results as it stands. The first comment of a field says
//! in a line what the result is, and the end of the field what it rests on: the code of a
//! topic, or an [`Origin`]. From that follow the struct, and the dictionary of its results.

use std::collections::HashSet;

/// What a result comes from that rests on no rule and no formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Origin {
    /// The spec, with the rows of the catalogue that it names.
    Spec,
    /// What was asked for, or what stands for it by default.
    Option,
    /// Counting.
    Count,
    /// The program itself.
    Program,
    /// The rule of the finding that it belongs to.
    Finding,
    /// The source that stands beside the caution.
    Caution,
}

/// What the low, typical and high of a result are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Spread {
    /// Read off an ensemble.
    Members,
    /// By the low, typical and high of the numbers that go in.
    Numbers,
}

/// What a result rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ground {
    /// A rule or a formula, by the code of its topic.
    Topic(&'static str),
    /// Something else.
    From(Origin),
}

/// What stands at the path of a result.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ResultKind {
    /// A number, or the three of a band.
    Number,
    /// A name or a sentence.
    Word,
    /// Yes or no.
    Flag,
    /// A list.
    List,
    /// A section of results with paths of their own.
    Section,
}

/// A result as its field declares it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Declared {
    /// Its path; `[]` stands for any item of a list.
    pub path: String,
    /// What it is.
    pub says: &'static str,
    /// What it rests on.
    pub ground: Ground,
    /// What its low, typical and high are, where it has them.
    pub band: Option<Spread>,
    /// What stands there.
    pub kind: ResultKind,
}

/// Where results stand that are made of others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ResultSection<'a> {
    /// Its path; empty for all that a command gives.
    pub path: &'a str,
    /// What it rests on itself.
    pub ground: Ground,
}

impl ResultSection<'_> {
    /// The path of a field.
    pub fn field(self, name: &str) -> String {
        if self.path.is_empty() {
            name.to_owned()
        } else {
            format!("{}.{name}", self.path)
        }
    }
}

/// A value that results are made of.
pub trait Described {
    /// What stands at its path.
    const KIND: ResultKind;

    /// Adds the results within a value; none within a number or a word.
    fn describe(_section: ResultSection<'_>, _found: &mut Vec<Declared>) {}
}

/// Every result of a struct of results; of two at one path the later stands.
pub fn within<T: Described>() -> Vec<Declared> {
    let all = ResultSection {
        path: "",
        ground: Ground::From(Origin::Program),
    };
    let mut found = Vec::new();
    T::describe(all, &mut found);
    let mut paths = HashSet::new();
    found.reverse();
    found.retain(|result| paths.insert(result.path.clone()));
    found.reverse();
    found
}

/// Says what stands at the path of a plain value.
macro_rules! plain {
    ($($kind:ident: $($type:ty),+;)+) => {
        $($(impl $crate::result::Described for $type {
            const KIND: $crate::result::ResultKind = $crate::result::ResultKind::$kind;
        })+)+
    };
}
pub(crate) use plain;

plain! {
    Number: f64, u32, u64, i32, usize;
    Word: String, &'static str;
    Flag: bool;
}

impl<T: Described> Described for Option<T> {
    const KIND: ResultKind = T::KIND;

    fn describe(section: ResultSection<'_>, found: &mut Vec<Declared>) {
        T::describe(section, found);
    }
}

impl<T: Described> Described for Vec<T> {
    const KIND: ResultKind = ResultKind::List;

    fn describe(section: ResultSection<'_>, found: &mut Vec<Declared>) {
        let path = &format!("{}[]", section.path);
        T::describe(ResultSection { path, ..section }, found);
    }
}

/// Declares a struct of results. A field reads
///
/// ```text
/// /// what the result is, in a line
/// pub ready_day: Option<Estimate> => "animals.early" by Members,
/// ```
///
/// with the code of its topic, an [`Origin`], or `ResultSection` where it rests on what the
/// section rests on; with `by` where it has a band, and with `each` where the items of its
/// list are results too. A field that rests on nothing is a section, or no result.
macro_rules! results {
    ($(
        $(#[doc = $about:literal])*
        #[derive($($derive:ident),+)]
        pub struct $name:ident {
            $(
                $(#[doc = $says:literal])+
                $(#[serde($($serde:tt)+)])?
                pub $field:ident: $type:ty
                    $(=> $ground:tt $(by $spread:ident)? $(each $item:literal)?)?,
            )+
        }
    )+) => {
        $(
            $(#[doc = $about])*
            #[derive($($derive),+)]
            pub struct $name {
                $(
                    $(#[doc = $says])+
                    $(#[serde($($serde)+)])?
                    pub $field: $type,
                )+
            }

            impl $crate::result::Described for $name {
                const KIND: $crate::result::ResultKind = $crate::result::ResultKind::Section;

                fn describe(
                    section: $crate::result::ResultSection<'_>,
                    found: &mut Vec<$crate::result::Declared>,
                ) {
                    $($crate::result::field!(
                        (section, found), $field, $type, concat!($($says),+),
                        [$($($serde)+)?] $($ground $(by $spread)? $(each $item)?)?
                    );)+
                }
            }
        )+
    };
}
pub(crate) use results;

/// Adds a field of a struct of results, and what is within it.
macro_rules! field {
    ($to:tt, $field:ident, $type:ty, $says:expr, [skip]) => {};
    (($section:ident, $found:ident), $field:ident, $type:ty, $says:expr, [flatten]) => {
        <$type as $crate::result::Described>::describe($section, $found)
    };
    ($to:tt, $field:ident, $type:ty, $says:expr,
        [rename = $name:literal $(, skip_serializing_if = $skip:literal)?] $($rest:tt)*) => {
        $crate::result::field!(at $to, $name, $type, $says, $($rest)*)
    };
    ($to:tt, $field:ident, $type:ty, $says:expr, [$($serde:tt)*] $($rest:tt)*) => {
        $crate::result::field!(at $to, stringify!($field), $type, $says, $($rest)*)
    };
    (at ($section:ident, $found:ident), $name:expr, $type:ty, $says:expr,) => {{
        let path = &$section.field($name);
        <$type as $crate::result::Described>::describe(
            $crate::result::ResultSection { path, ..$section }, $found,
        );
    }};
    (at ($section:ident, $found:ident), $name:expr, $type:ty, $says:expr,
        $ground:tt $(by $spread:ident)? $(each $item:literal)?) => {{
        let path = $section.field($name);
        let ground = $crate::result::ground!($section, $ground);
        $found.push($crate::result::Declared {
            path: path.clone(),
            says: $says.trim_start(),
            ground,
            band: None$(.or(Some($crate::result::Spread::$spread)))?,
            kind: <$type as $crate::result::Described>::KIND,
        });
        $($found.push($crate::result::Declared {
            path: format!("{path}[]"),
            says: $item,
            ground,
            band: None,
            kind: $crate::result::ResultKind::Word,
        });)?
        <$type as $crate::result::Described>::describe(
            $crate::result::ResultSection { path: &path, ground }, $found,
        );
    }};
}
pub(crate) use field;

/// What a result rests on, as a field says it.
macro_rules! ground {
    ($section:ident, Section) => {
        $section.ground
    };
    ($section:ident, $topic:literal) => {
        $crate::result::Ground::Topic($topic)
    };
    ($section:ident, $origin:ident) => {
        $crate::result::Ground::From($crate::result::Origin::$origin)
    };
}
pub(crate) use ground;
