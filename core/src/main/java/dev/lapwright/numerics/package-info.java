/**
 * Numerical methods without physics: interpolation and smoothing by cubic splines, banded matrices, quadratic programs. Not
 * exported: the interfaces of the other packages take and give tables, never a type of this one.
 */
package dev.lapwright.numerics;
