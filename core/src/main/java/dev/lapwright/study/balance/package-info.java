/** Understeer and oversteer in each phase of each corner, and what to turn against a complaint. */
package dev.lapwright.study.balance;
