/** Invented circuits, cars and conditions, as resources. Open, so that {@code dev.lapwright.shared} can read them. */
open module dev.lapwright.demo {}
