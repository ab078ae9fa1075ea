// Curing a layout document: the changes that findings propose, made one after the other as long as each of
// them leaves the layout better than it was.
#pragma once

#include "sim/layout/finding.hpp"

#include <functional>
#include <string>
#include <vector>

namespace dialplate {

/// Everything that is found in a document.
using Examine = std::function<std::vector<Finding>(const std::string& document)>;

/// A finding whose cure was tried in vain, and why it was not kept; one sentence without a full stop.
struct NotCured {
    Finding finding;
    std::string why;
};

struct Cured {
    std::string document;        ///< With the changes; all other bytes as they were.
    std::vector<Finding> cured;  ///< In the order of the changes, places of the time before each.
    std::vector<NotCured> refused;  ///< Sorted as tried.
    std::vector<Finding> left;      ///< What is found in the document now.
};

/// Makes the changes of findings that have a cure, `must` first, those accepted by a waiver left out, and
/// examines the document after each. A change is kept when its finding is gone, no finding of severity
/// `must` or `error` is new (by rule and item), and there is less of what counts, a `must` weighing more than
/// any number of `should`, a `should` more than any number of `note`. A document with errors stays as it is.
Cured cure(std::string document, const Examine& examine);

}  // namespace dialplate
