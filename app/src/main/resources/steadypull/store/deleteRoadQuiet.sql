delete from road_quiet where quiet_key = :quietKey
