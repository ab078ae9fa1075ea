#include "sim/desk/member_editor.hpp"

#include "sim/check/contrast.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/item_changes.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/colour.hpp"

#include <misc/cpp/imgui_stdlib.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace dialplate {
