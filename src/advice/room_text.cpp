// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/room.hpp"
namespace tuckwright {
std::string room_text(const Bundle&, const RoomAnswer&) { return ""; }
std::string room_json(const Bundle&, const RoomAnswer&) { return ""; }
}
