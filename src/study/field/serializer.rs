//! What a gatherer takes and passes over of each kind of value.

use std::fmt;

use serde::ser::{
    Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant, SerializeTuple,
    SerializeTupleStruct, SerializeTupleVariant, Serializer,
};

use super::Gatherer;
use crate::study::cell::Cell;

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

/// Structs have a column for each field.
macro_rules! by_field {
    ($($trait:ident,)+) => {
        $(impl $trait for &mut Gatherer<'_> {
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
        })+
    };
}

by_field! {
    SerializeStruct,
    SerializeStructVariant,
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
