/** How weight moves between four wheels, roll stiffness, and brakes: SAE J670 / ISO 8855 terms. */
package dev.lapwright.chassis;
