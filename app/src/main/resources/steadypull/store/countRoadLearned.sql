select count(*) from road_learned where origin = :origin
