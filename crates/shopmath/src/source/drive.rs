//! The sources of the calculators for belt drives.
