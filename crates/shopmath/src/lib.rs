//! Shop math.
