/** Inspection of any file that a user may have: what cannot be read, and what can be read and is hardly true. */
package dev.lapwright.inspection;
