declare module 'kalman-filter' {
  interface State {
    mean: number[][];
    covariance: number[][];
    index: number;
  }
  interface Filter {
    getInitState(): State;
    correct(options: { predicted: State; observation: number[] }): State;
    filter(options: { previousCorrected?: State; observation: number[] }): State;
  }
  const library: { KalmanFilter: new (options: object) => Filter };
  export default library;
}
