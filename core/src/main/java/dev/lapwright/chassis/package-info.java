/** How weight moves between four wheels, and roll stiffness: SAE J670 / ISO 8855 terms. */
package dev.lapwright.chassis;
