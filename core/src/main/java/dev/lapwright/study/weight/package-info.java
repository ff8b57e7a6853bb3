/** What a kilogram is worth at a circuit, where, and over which axle. */
package dev.lapwright.study.weight;
