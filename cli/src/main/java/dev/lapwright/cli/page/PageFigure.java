package dev.lapwright.cli.page;

/**
 * A drawing.
 *
 * @param wide an SVG element for pages with room, and for paper
 * @param narrow one for small screens; null where the wide one is left out there
 * @param tall whether it needs more height than half a sheet of paper
 * @param caption what it shows and how to read it
 */
public record PageFigure(String wide, String narrow, boolean tall, String caption) {}
