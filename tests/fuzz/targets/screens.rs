//! Searches for inputs that [`fenderside_fuzz::screens`] does not hold for.
#![no_main]

libfuzzer_sys::fuzz_target!(|input: &[u8]| fenderside_fuzz::screens(input));
