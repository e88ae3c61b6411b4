//! The cautions of the calculators for belt drives.
