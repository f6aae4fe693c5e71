select trip_key, id, removed from trip where origin = :origin
