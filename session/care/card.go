package care

// CallFirst stands over the emergency card.
const CallFirst = "Call the local emergency number first; what its people and qualified people on the spot say counts. " +
	"Send somebody to meet the ambulance."
