//! The sources of the calculators for fasteners.
