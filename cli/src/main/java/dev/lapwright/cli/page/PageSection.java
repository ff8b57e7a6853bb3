package dev.lapwright.cli.page;

import java.util.List;

/**
 * A part of a page under its own heading.
 *
 * @param id for links: lower-case letters and hyphens
 * @param heading what it is called
 * @param reading one sentence on what it is and how to read it
 * @param blocks what it holds
 */
public record PageSection(String id, String heading, String reading, List<PageBlock> blocks) {
    public PageSection {
        blocks = List.copyOf(blocks);
    }
}
