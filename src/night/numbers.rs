//! Structs of numbers that exist in several forms.

/// Declares a struct with one number a field, and how to turn all of them into
/// another form.
macro_rules! numbers {
    (
        $(#[$doc:meta])*
        $sight:vis struct $group:ident {
            $($(#[$about:meta])* $name:ident,)+
        }
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq)]
        $sight struct $group<T> {
            $($(#[$about])* $sight $name: T,)+
        }

        impl<T: Copy> $group<T> {
            /// The same numbers in another form, each made from the old one in
            /// the order of the fields.
            $sight fn map<U>(&self, mut change: impl FnMut(T) -> U) -> $group<U> {
                $group { $($name: change(self.$name),)+ }
            }
        }
    };
}

pub(super) use numbers;
