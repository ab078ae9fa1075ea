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

    /// Reads the file again. A good one replaces the prototype, which keeps its page, its palette and
    /// every value that still exists under its name and type; a broken one leaves all as it is.
    /// @return Whether the prototype was replaced.
    bool load();

    /// The ledger and the findings of the present prototype, worked out at the first call after a load:
    /// the picture need not wait for them.
    void judge();
    [[nodiscard]] bool judged() const { return findings_.has_value(); }

    [[nodiscard]] const std::string& file() const { return file_; }
    /// Null until a good file was read.
    [[nodiscard]] Prototype* prototype() { return prototype_.get(); }
    [[nodiscard]] const Layout& layout() const { return prototype_->layout(); }
    /// Mistakes of the last save; empty when it was good.
    [[nodiscard]] const std::vector<Finding>& mistakes() const { return mistakes_; }
    [[nodiscard]] const std::optional<std::vector<Finding>>& findings() const { return findings_; }
    [[nodiscard]] const std::optional<Ledger>& ledger() const { return ledger_; }
    /// Every file whose saving changes the picture: the layout, its fonts and its pictures.
    [[nodiscard]] std::vector<std::string> sources() const;

private:
    std::string file_;
    bool live_;
    std::unique_ptr<Prototype> prototype_;
    std::optional<BuiltImage> built_;
    std::vector<Finding> remarks_;  ///< Of reading and building, below an error.
    std::vector<Finding> mistakes_;
    std::optional<std::vector<Finding>> findings_;
    std::optional<Ledger> ledger_;
};

}  // namespace dialplate
