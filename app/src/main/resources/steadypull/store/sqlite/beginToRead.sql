begin deferred
