// What lies on the bench: a layout file with all that follows from it, and what became of its last save.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/prototype/prototype.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

class Workpiece {
public:
    Workpiece(std::string file, bool live);

    /// Reads the file again. @return Its text; nothing when it cannot be read, which is then a mistake.
    std::optional<std::string> read();
    /// Shows another text of the document. A good one replaces the prototype, which keeps its page, its
    /// palette and every value that still exists under its name and type; a broken one leaves all as it is.
    /// @return Whether the prototype was replaced.
    bool show(const std::string& text);
    /// The same, but a broken text leaves no mistakes behind either. @return Why it is not shown; or empty.
    std::string try_to_show(const std::string& text);
    /// For a text with mistakes: shows another one that has fewer of them, or none. @return Why not; or empty.
    std::string show_if_better(const std::string& text);
    /// What was last given to show(), good or broken.
    [[nodiscard]] const std::string& text() const { return text_; }
    /// Another file from now on.
    void move_to(std::string file) { file_ = std::move(file); }

    /// The ledger and the findings of the present prototype, worked out at the first call after a load:
    /// the picture need not wait for them.
    void judge();
    [[nodiscard]] bool judged() const { return findings_.has_value(); }

    [[nodiscard]] const std::string& file() const { return file_; }
    /// Null until a good file was read.
    [[nodiscard]] Prototype* prototype() { return prototype_.get(); }
    [[nodiscard]] const Layout& layout() const { return prototype_->layout(); }
    [[nodiscard]] const BuiltImage& built() const { return *built_; }
    /// Mistakes of the last save; empty when it was good.
    [[nodiscard]] const std::vector<Finding>& mistakes() const { return mistakes_; }
    /// Whether the mistakes are those of a text, and not that there is none.
    [[nodiscard]] bool can_be_read() const {
        return mistakes_.empty() || mistakes_.front().place.line > 0;
    }
    [[nodiscard]] const std::optional<std::vector<Finding>>& findings() const { return findings_; }
    [[nodiscard]] const std::optional<Ledger>& ledger() const { return ledger_; }
    /// Every file whose saving changes the picture: the layout, its fonts and its pictures.
    [[nodiscard]] std::vector<std::string> sources() const;

private:
    struct Fresh {
        std::optional<Layout> layout;
        std::optional<BuiltImage> image;
        std::vector<Finding> remarks, mistakes;
    };
    [[nodiscard]] Fresh make(const std::string& text) const;
    void take(Fresh fresh);

    std::string file_;
    std::string text_;
    bool live_;
    std::unique_ptr<Prototype> prototype_;
    std::optional<BuiltImage> built_;
    std::vector<Finding> remarks_;  ///< Of reading and building, below an error.
    std::vector<Finding> mistakes_;
    std::optional<std::vector<Finding>> findings_;
    std::optional<Ledger> ledger_;
};

}  // namespace dialplate
