delete from overview where trip_key in (select trip_key from trip where removed = 2)
