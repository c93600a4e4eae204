/* The sweep over blade elements in C, with the layout and the approximations of rotor-sweep.kernel.ts, as a yardstick of speed.
   Reads one rotor and state from a binary file of doubles, sweeps it a number of times, prints nanoseconds per element and results. */
#define _DEFAULT_SOURCE
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define STEPS 4096
#define WIDTH 4

typedef struct {
  int elements, azimuths, inflow, radial;
  const double *x, *twist, *weight, *lift_weight, *sine, *cosine, *table;
} Rotor;

typedef struct {
  double mu, lambda_c, lambda_i, theta0, theta1c, theta1s, coning, tip_speed, sound;
} State;

typedef struct {
  double ct, cq, ch, cy, moment_cos, moment_sin, mean_moment, induced;
} Result;

static double fore_aft_gradient(int kind, double mu, double lambda) {
  if (kind == 0) return 0;
  double through = sqrt(lambda * lambda + 0.003 * 0.003);
  double total = sqrt(mu * mu + through * through);
  double half_skew = mu / (total + through);
  if (kind == 2) return (15 * M_PI) / 32 * half_skew;
  double gradient = (4.0 / 3.0) * (half_skew - 1.8 * mu * total);
  if (gradient <= 0) return 0;
  return gradient < 0.02 ? gradient * gradient * (0.04 - gradient) / (0.02 * 0.02) : gradient;
}

static void sweep(const Rotor *rotor, const State *s, Result *out) {
  const double octant = M_SQRT2 - 1, quarter = M_PI / 2, eighth = M_PI / 4;
  const double steps_per_radian = STEPS / (2 * M_PI), shift = STEPS * 2.5;
  const int resultant = rotor->radial == 2;
  const double along_span = rotor->radial == 0 ? 0 : 1;
  const double *table = rotor->table;
  const double through = s->lambda_c + s->lambda_i;
  const double kx = s->lambda_i * fore_aft_gradient(rotor->inflow, s->mu, through);
  const double ky = s->lambda_i * (rotor->inflow == 1 ? -2 * s->mu : 0);
  const double mach_squared = (s->tip_speed / s->sound) * (s->tip_speed / s->sound);
  Result r = {0};
  for (int j = 0; j < rotor->azimuths; j++) {
    const double sin = rotor->sine[j], cos = rotor->cosine[j];
    const double advance = s->mu * sin, radial = s->mu * cos, radial_squared = radial * radial;
    const double plunge = through + radial * s->coning, gradient = kx * cos + ky * sin;
    const double pitch = s->theta0 + s->theta1c * cos + s->theta1s * sin;
    double sum_z = 0, sum_x = 0, sum_x_radius = 0, sum_z_radius = 0, sum_r = 0;
    for (int i = 0; i < rotor->elements; i++) {
      const double x = rotor->x[i], ut = x + advance, up = plunge + gradient * x;
      const double speed_squared = ut * ut + up * up, speed = sqrt(speed_squared);
      const double at = ut < 0 ? -ut : ut, ap = up < 0 ? -up : up;
      double ratio, base;
      if (ap <= octant * at) {
        ratio = ap / (at + 1e-300);
        base = 0;
      } else if (at <= octant * ap) {
        ratio = -at / ap;
        base = quarter;
      } else {
        ratio = (ap - at) / (ap + at);
        base = eighth;
      }
      const double r2 = ratio * ratio;
      double phi = base + ratio * (0.9999999993921003 + r2 * (-0.3333330749342842 + r2 * (0.19998210797504756 +
        r2 * (-0.14239982917689845 + r2 * (0.10572814468218183 - 0.060332416829667085 * r2)))));
      if (ut < 0) phi = M_PI - phi;
      if (up < 0) phi = -phi;
      const double position = (pitch + rotor->twist[i] - phi) * steps_per_radian + shift;
      const int whole = (int)position;
      const double part = position - whole;
      const double *low = table + (whole & (STEPS - 1)) * WIDTH;
      const double mach2 = mach_squared * speed_squared;
      const double compression = 1 / sqrt(1 - (mach2 < 0.81 ? mach2 : 0.81));
      const double lift = (low[0] + part * (low[4] - low[0])) * compression + low[1] + part * (low[5] - low[1]);
      const double drag = low[2] + part * (low[6] - low[2]);
      const double lifting = rotor->lift_weight[i] * speed * lift;
      double dragging = rotor->weight[i] * drag * speed, along_blade = dragging;
      if (resultant) {
        const double rubbing = rotor->weight[i] * (low[3] + part * (low[7] - low[3]));
        along_blade = rubbing * sqrt(speed_squared + radial_squared);
        dragging += along_blade - rubbing * speed;
      }
      const double dz = lifting * ut - dragging * up, dx = lifting * up + dragging * ut;
      sum_z += dz;
      sum_x += dx;
      sum_z_radius += x * dz;
      sum_x_radius += x * dx;
      sum_r += along_blade;
    }
    const double inward = sum_z * s->coning - along_span * radial * sum_r;
    r.ct += sum_z;
    r.cq += sum_x_radius;
    r.ch += sum_x * sin - inward * cos;
    r.cy -= sum_x * cos + inward * sin;
    r.moment_cos += sum_z_radius * cos;
    r.moment_sin += sum_z_radius * sin;
    r.mean_moment += sum_z_radius;
    r.induced += s->lambda_i * sum_z + gradient * sum_z_radius;
  }
  *out = r;
}

int main(int count, char **arguments) {
  if (count < 3) return 2;
  FILE *file = fopen(arguments[1], "rb");
  if (!file) return 2;
  fseek(file, 0, SEEK_END);
  const long size = ftell(file) / (long)sizeof(double);
  rewind(file);
  double *data = malloc(size * sizeof(double));
  if (!data || fread(data, sizeof(double), size, file) != (size_t)size) return 2;
  fclose(file);
  const int sweeps = atoi(arguments[2]);
  Rotor rotor = {(int)data[0], (int)data[1], (int)data[2], (int)data[3], 0, 0, 0, 0, 0, 0, 0};
  State state = {data[4], data[5], data[6], data[7], data[8], data[9], data[10], data[11], data[12]};
  const double *next = data + 13;
  rotor.x = next;
  rotor.twist = next += rotor.elements;
  rotor.weight = next += rotor.elements;
  rotor.lift_weight = next += rotor.elements;
  rotor.sine = next += rotor.elements;
  rotor.cosine = next += rotor.azimuths;
  rotor.table = next += rotor.azimuths;
  Result result;
  sweep(&rotor, &state, &result);
  const Result first = result;
  struct timespec begin, end;
  double sum = 0;
  clock_gettime(CLOCK_MONOTONIC, &begin);
  for (int i = 0; i < sweeps; i++) {
    state.mu = data[4] + i * 1e-9;
    sweep(&rotor, &state, &result);
    sum += result.ct;
  }
  clock_gettime(CLOCK_MONOTONIC, &end);
  const double seconds = (double)(end.tv_sec - begin.tv_sec) + 1e-9 * (double)(end.tv_nsec - begin.tv_nsec);
  printf("%.6f %.17g %.17g %.17g %g\n", seconds * 1e9 / sweeps / rotor.elements / rotor.azimuths, first.ct, first.cq, first.ch, sum);
  return 0;
}
