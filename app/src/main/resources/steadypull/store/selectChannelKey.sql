select channel_key from channel where id = :id and unit = :unit
