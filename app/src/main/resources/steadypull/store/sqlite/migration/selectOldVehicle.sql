select vehicle_file from old_trip where trip_key = :tripKey
