//! Values of a result by their path, gathered without writing the result out.

use std::collections::HashMap;
use std::fmt;

use serde::ser::{
    Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant, SerializeTuple,
    SerializeTupleStruct, SerializeTupleVariant, Serializer,
};

use super::column::Column;
use crate::finding::Status;

/// One value of a row.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// A number.
    Number(f64),
    /// A whole number.
    Whole(u64),
    /// A name or word.
    Word(String),
    /// Yes or no.
    Flag(bool),
}

impl Cell {
    /// Its number; of a status, its place from ok (0) to act (3).
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number),
            Self::Whole(whole) => Some(*whole as f64),
            Self::Word(word) => status(word).map(|status| f64::from(status as u8)),
            Self::Flag(_) => None,
        }
    }
}

/// The status of a word.
pub(super) fn status(word: &str) -> Option<Status> {
    let all = [Status::Ok, Status::Note, Status::Watch, Status::Act];
    all.into_iter().find(|status| status.word() == word)
}

/// Where each path that is asked for goes.
#[derive(Debug)]
pub(super) struct Places {
    by_path: HashMap<String, Vec<usize>>,
    count: usize,
}

impl Places {
    pub(super) fn of(columns: &[Column]) -> Self {
        let mut by_path: HashMap<String, Vec<usize>> = HashMap::new();
        for (place, column) in columns.iter().enumerate() {
            for path in column.places() {
                by_path.entry(path).or_default().push(place);
            }
        }
        Self {
            by_path,
            count: columns.len(),
        }
    }
}

/// Gathers the values asked for from whatever can be serialised.
pub(super) struct Gatherer<'p> {
    places: &'p Places,
    path: String,
    cells: Vec<Option<Cell>>,
}

impl<'p> Gatherer<'p> {
    pub(super) fn new(places: &'p Places) -> Self {
        Self {
            places,
            path: String::with_capacity(64),
            cells: vec![None; places.count],
        }
    }

    /// Takes what is asked for from a result.
    pub(super) fn gather(&mut self, result: &impl Serialize) {
        // Gathering has no way to fail.
        let _ = result.serialize(&mut *self);
    }

    /// Takes one value if it is asked for.
    pub(super) fn offer(&mut self, path: &str, cell: &Cell) {
        for place in self.places.by_path.get(path).into_iter().flatten() {
            self.cells[*place] = Some(cell.clone());
        }
    }

    pub(super) fn into_cells(self) -> Vec<Option<Cell>> {
        self.cells
    }

    fn leaf(&mut self, cell: impl FnOnce() -> Cell) {
        let Some(places) = self.places.by_path.get(&self.path) else {
            return;
        };
        let cell = cell();
        for place in places {
            self.cells[*place] = Some(cell.clone());
        }
    }

    fn field(&mut self, key: &str, value: &(impl Serialize + ?Sized)) -> Result<(), fmt::Error> {
        let length = self.path.len();
        if length > 0 {
            self.path.push('.');
        }
        self.path.push_str(key);
        let done = value.serialize(&mut *self);
        self.path.truncate(length);
        done
    }
}

/// Leaves of one kind of number.
macro_rules! leaves {
    ($($name:ident: $type:ty => $cell:ident as $as:ty,)+) => {
        $(fn $name(self, value: $type) -> Result<(), fmt::Error> {
            self.leaf(|| Cell::$cell(value as $as));
            Ok(())
        })+
    };
}

impl Serializer for &mut Gatherer<'_> {
    type Ok = ();
    type Error = fmt::Error;
    type SerializeSeq = Self;
    type SerializeTuple = Self;
    type SerializeTupleStruct = Self;
    type SerializeTupleVariant = Self;
    type SerializeMap = Self;
    type SerializeStruct = Self;
    type SerializeStructVariant = Self;

    leaves! {
        serialize_i8: i8 => Number as f64,
        serialize_i16: i16 => Number as f64,
        serialize_i32: i32 => Number as f64,
        serialize_i64: i64 => Number as f64,
        serialize_u8: u8 => Whole as u64,
        serialize_u16: u16 => Whole as u64,
        serialize_u32: u32 => Whole as u64,
        serialize_u64: u64 => Whole as u64,
        serialize_f32: f32 => Number as f64,
        serialize_f64: f64 => Number as f64,
    }

    fn serialize_bool(self, value: bool) -> Result<(), fmt::Error> {
        self.leaf(|| Cell::Flag(value));
        Ok(())
    }

    fn serialize_char(self, value: char) -> Result<(), fmt::Error> {
        self.leaf(|| Cell::Word(value.to_string()));
        Ok(())
    }

    fn serialize_str(self, value: &str) -> Result<(), fmt::Error> {
        self.leaf(|| Cell::Word(value.to_owned()));
        Ok(())
    }

    fn serialize_bytes(self, _value: &[u8]) -> Result<(), fmt::Error> {
        Ok(())
    }

    fn serialize_none(self) -> Result<(), fmt::Error> {
        Ok(())
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), fmt::Error> {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Result<(), fmt::Error> {
        Ok(())
    }

    fn serialize_unit_struct(self, _name: &'static str) -> Result<(), fmt::Error> {
        Ok(())
    }

    fn serialize_unit_variant(
        self,
        _name: &'static str,
        _index: u32,
        variant: &'static str,
    ) -> Result<(), fmt::Error> {
        self.serialize_str(variant)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _name: &'static str,
        value: &T,
    ) -> Result<(), fmt::Error> {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _name: &'static str,
        _index: u32,
        _variant: &'static str,
        value: &T,
    ) -> Result<(), fmt::Error> {
        value.serialize(self)
    }

    fn serialize_seq(self, _length: Option<usize>) -> Result<Self, fmt::Error> {
        Ok(self)
    }

    fn serialize_tuple(self, _length: usize) -> Result<Self, fmt::Error> {
        Ok(self)
    }

    fn serialize_tuple_struct(
        self,
        _name: &'static str,
        _length: usize,
    ) -> Result<Self, fmt::Error> {
        Ok(self)
    }

    fn serialize_tuple_variant(
        self,
        _name: &'static str,
        _index: u32,
        _variant: &'static str,
        _length: usize,
    ) -> Result<Self, fmt::Error> {
        Ok(self)
    }

    fn serialize_map(self, _length: Option<usize>) -> Result<Self, fmt::Error> {
        Ok(self)
    }

    fn serialize_struct(self, _name: &'static str, _length: usize) -> Result<Self, fmt::Error> {
        Ok(self)
    }

    fn serialize_struct_variant(
        self,
        _name: &'static str,
        _index: u32,
        _variant: &'static str,
        _length: usize,
    ) -> Result<Self, fmt::Error> {
        Ok(self)
    }
}

/// Lists have no column: their items are passed over.
macro_rules! passed_over {
    ($($trait:ident::$method:ident,)+) => {
        $(impl $trait for &mut Gatherer<'_> {
            type Ok = ();
            type Error = fmt::Error;

            fn $method<T: Serialize + ?Sized>(&mut self, _item: &T) -> Result<(), fmt::Error> {
                Ok(())
            }

            fn end(self) -> Result<(), fmt::Error> {
                Ok(())
            }
        })+
    };
}

passed_over! {
    SerializeSeq::serialize_element,
    SerializeTuple::serialize_element,
    SerializeTupleStruct::serialize_field,
    SerializeTupleVariant::serialize_field,
}

impl SerializeStruct for &mut Gatherer<'_> {
    type Ok = ();
    type Error = fmt::Error;

    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), fmt::Error> {
        self.field(key, value)
    }

    fn end(self) -> Result<(), fmt::Error> {
        Ok(())
    }
}

impl SerializeStructVariant for &mut Gatherer<'_> {
    type Ok = ();
    type Error = fmt::Error;

    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), fmt::Error> {
        self.field(key, value)
    }

    fn end(self) -> Result<(), fmt::Error> {
        Ok(())
    }
}

/// Maps have the keys of their data, which no column names.
impl SerializeMap for &mut Gatherer<'_> {
    type Ok = ();
    type Error = fmt::Error;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, _key: &T) -> Result<(), fmt::Error> {
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, _value: &T) -> Result<(), fmt::Error> {
        Ok(())
    }

    fn end(self) -> Result<(), fmt::Error> {
        Ok(())
    }
}
