vacuum
