// SPDX-License-Identifier: MIT
// Copy this file to secrets.h and put in the details of your own network. Never pass secrets.h on.
#pragma once

#define WIFI_NAME "your-network-name"
#define WIFI_PASSWORD "your-password"
