package cistern.clinic.launch;

import cistern.clinic.web.ErrorPages;
import cistern.clinic.web.Guard;
import cistern.clinic.web.Routes;
import org.springframework.boot.SpringBootConfiguration;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.ServerResponse;

/** What the web framework is told: the guard and the routes, and no store of its own. */
@SpringBootConfiguration(proxyBeanMethods = false)
@EnableAutoConfiguration(
    excludeName = {
      "org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration",
      "org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration"
    })
class WebWiring {

  @Bean
  SecurityFilterChain guard(HttpSecurity http, Guard guard) {
    return guard.toChain(http);
  }

  @Bean
  RouterFunction<ServerResponse> routes(Routes routes, ErrorPages troubles) {
    return routes.toFunction(troubles);
  }

  /** Nobody is found by the framework: people come in through the entrance only. */
  @Bean
  UserDetailsService nobody() {
    return name -> {
      throw new UsernameNotFoundException("people come in through the entrance only");
    };
  }
}
