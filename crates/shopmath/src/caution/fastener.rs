//! The cautions of the calculators for fasteners.
