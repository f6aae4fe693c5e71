select sensor_evidence from vehicle where name = :name
