/** The documents of car, setup, circuit and conditions: read, checked and written. No physics and no charts. */
package dev.lapwright.documents;
