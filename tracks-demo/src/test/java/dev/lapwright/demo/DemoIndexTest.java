package dev.lapwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class DemoIndexTest {
    @Test
    void theIndexListsEveryFileAndNoOther() {
        List<String> listed = new ArrayList<>(List.of("index.json"));
        for (JsonNode entry : DemoFiles.index()) {
            String folder = DemoFiles.FOLDERS.get(entry.path("kind").asText());
            listed.add(folder + "/" + entry.path("name").asText() + ".json");
        }
        for (JsonNode survey : DemoFiles.surveys()) {
            listed.add("surveys/" + survey.path("file").asText());
        }
        for (JsonNode log : DemoFiles.logs()) {
            listed.add("logs/" + log.path("file").asText());
        }
        List<String> found = DemoFiles.files(DemoFiles.ROOT).stream()
                .map(DemoFiles.ROOT::relativize)
                .map(path -> path.toString().replace('\\', '/'))
                .toList();
        assertThat(listed).containsExactlyInAnyOrderElementsOf(found);
    }

    @Test
    void titleAndDescriptionAreThoseOfTheDocument() {
        for (JsonNode entry : DemoFiles.index()) {
            JsonNode document = document(entry);
            assertThat(entry.path("title").asText())
                    .isNotBlank()
                    .isEqualTo(document.path("name").asText());
            assertThat(entry.path("description").asText())
                    .isNotBlank()
                    .doesNotContain("\n")
                    .isEqualTo(document.path("description").asText());
        }
    }

    @Test
    void everyDocumentIsMarkedWithTheKindOfItsFolder() {
        for (JsonNode entry : DemoFiles.index()) {
            assertThat(document(entry).path("lapwright").asText())
                    .isEqualTo(entry.path("kind").asText() + "/1");
        }
    }

    @Test
    void namesAreEasyToType() {
        for (JsonNode entry : DemoFiles.index()) {
            assertThat(entry.path("name").asText()).matches("[a-z][a-z0-9]*(-[a-z0-9]+)*");
        }
    }

    private static JsonNode document(JsonNode entry) {
        Path folder =
                DemoFiles.ROOT.resolve(DemoFiles.FOLDERS.get(entry.path("kind").asText()));
        return DemoFiles.read(folder.resolve(entry.path("name").asText() + ".json"));
    }
}
