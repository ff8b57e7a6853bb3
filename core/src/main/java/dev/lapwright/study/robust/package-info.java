/** Whether a choice of settings stands on all cars that a car may truly be. */
package dev.lapwright.study.robust;
