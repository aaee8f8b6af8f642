//! What the fields of a row rest on.

use serde::Serialize;
use serde_json::Value;

use super::*;
use crate::source::ReadExtent;

/// Every row says of fields that it has, and that differ from it; what is published was
/// read somewhere.
fn check<R: CatalogueRow + Serialize>() -> usize {
    let mut published = 0;
    for row in R::all() {
        let name = row.name();
        let Ok(Value::Object(fields)) = serde_json::to_value(row) else {
            panic!("{name} is no object");
        };
        let named = fields["basis_of"].as_object().unwrap();
        let read = row
            .sources()
            .iter()
            .any(|source| source.work().seen != ReadExtent::Memory);
        for (field, basis) in named {
            assert!(fields.contains_key(field), "{name} has no {field}");
            assert_ne!(basis, &fields["basis"], "{name}: {field}");
            assert!(basis != "published" || read, "{name}: {field}");
            published += usize::from(basis == "published");
        }
    }
    published
}

#[test]
fn the_basis_of_a_field_is_that_of_a_field_there_is() {
    assert!(check::<Plant>() > 20);
    assert_eq!(check::<Animal>(), 0);
    assert_eq!(check::<Soil>(), 0);
    assert_eq!(check::<Cap>(), 5);
}

#[test]
fn frogbit_has_one_published_number() {
    // A doubling in 5.7 days (Madsen and Morgan 2021): ln 2 / 5.7.
    let frogbit = find::<Plant>("Amazon frogbit").unwrap();
    let published = frogbit.basis_of.iter();
    let published: Vec<_> = published
        .filter(|(_, basis)| **basis == Basis::Published)
        .collect();
    assert_eq!(
        published,
        [(&"rgr_good_per_d".to_owned(), &Basis::Published)]
    );
    assert!((frogbit.rgr_good_per_d.typical - 0.122).abs() < 5e-4);
    assert_eq!(frogbit.basis, Basis::Judgement);
}
