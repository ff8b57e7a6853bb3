/**
 * Drag and downforce as areas: wings, the ride-height map, and the sprung platform that settles under its own downforce.
 * Neglects yaw, cornering flow and ground clearance under roll.
 */
package dev.lapwright.aero;
