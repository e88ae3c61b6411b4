//! Belt drives: route, belt, tensioner, tension, slip, wear.
