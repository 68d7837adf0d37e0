/** What is said before a command unless the cook has chosen another address. */
export const defaultAddress = "listen kitchen";
