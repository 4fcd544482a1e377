export const degreesOf = (radians: number): number => (radians * 180) / Math.PI

export const radiansOf = (degrees: number): number => (degrees * Math.PI) / 180
