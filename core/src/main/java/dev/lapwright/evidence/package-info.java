/** Statistics on lap times: what a timing screen can show and what it cannot. */
package dev.lapwright.evidence;
